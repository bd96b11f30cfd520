"""Asking a public design-value service for the ground motion of a place: the one thing in the program that reaches out.

Nothing here runs unless a person asks for it. Sent: latitude and longitude to four decimals (about 11 m), risk category
and site class; nothing else of the house, no name and no address. The answer is untrusted: it is read up to a limit and
a time, checked field by field against what a survey may hold and against the question, and only then put into a copy of
the house, with its date and source; every other fact stays. What goes wrong is told in one line.
"""

from __future__ import annotations

import hashlib
import http.client
import json
import time
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from types import MappingProxyType
from typing import Any, Final

from groundsill.doors.hazard_answers import HazardBeside, HazardChange, HazardFound, HazardHeld
from groundsill.doors.text import shorten
from groundsill.house.model import member
from groundsill.house.site import DesignValues, Hazard, Site
from groundsill.house.survey import in_order
from groundsill.standards.asce7_16.ground_motion import site_values
from groundsill.standards.asce7_22.site_class import CLASSES as CLASSES_22
from groundsill.work.basis import basis_of
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, Fault, GroundsillError, OutsideLimits
from groundsill.working.version import VERSION

__all__ = [
    "EDITIONS",
    "SERVICE",
    "TIMEOUT_S",
    "NoAnswer",
    "Question",
    "address_of",
    "beside",
    "changes_of",
    "edition_of",
    "held_by",
    "look_up",
    "question_of",
    "with_found",
]

# Documented at its own address: one page of JSON for each edition (asce7-16.json, asce7-22.json).
SERVICE: Final = "https://earthquake.usgs.gov/ws/designmaps/"
SERVICE_NAME: Final = "U.S. Geological Survey, seismic design web service"
TIMEOUT_S: Final = 20.0
MOST_BYTES: Final = 2_000_000  # an answer with all its spectra has some 50,000

# How the service calls the classes that a survey may name; a class that is not here, it is not asked about.
_CLASSES: Final[Mapping[str, Mapping[str, str]]] = MappingProxyType(
    {
        "asce7-16": MappingProxyType({name: name for name in ("A", "B", "B-estimated", "C", "D", "D-default", "E")}),
        "asce7-22": MappingProxyType(
            {name: name for name in CLASSES_22} | {"D-default": "Default", "B-estimated": "B"},
        ),
    }
)
EDITIONS: Final = tuple(_CLASSES)
_ROUNDING: Final = 0.002  # the service rounds to three decimals, and so does what it rounds from


class NoAnswer(GroundsillError):
    """The design-value service gave nothing that can be used; the message says why, and nothing was changed."""


@dataclass(frozen=True, slots=True)
class Question:
    """What the service is asked: an edition of ASCE 7, a place, and how the house and its ground are classed."""

    edition: str
    latitude: float
    longitude: float
    risk_category: str
    site_class: str


# ---- The question ---------------------------------------------------------------------------------------------------


def edition_of(house: House) -> str:
    """The edition of ASCE 7 that the house goes by.

    Raises:
        BadSurvey: when its basis names no known building code or an edition of something else.
    """
    return basis_of(house).edition("asce7")


def question_of(house: House, edition: str | None = None) -> Question:
    """The question about a house.

    Args:
        house: its place, risk category and site class are asked about (D-default where no ground motion is held yet).
        edition: ``asce7-16`` or ``asce7-22``; the one the house goes by when it is left out.

    Raises:
        BadSurvey: one fault for each thing that must be known first.
    """
    site = house.survey.site
    edition = edition or edition_of(house)
    site_class = site.hazard.site_class if site.hazard else "D-default"
    faults = []
    if edition not in EDITIONS:
        faults.append(Fault("--edition", repr(edition), f"the service is asked by {' or '.join(EDITIONS)}"))
    elif site_class not in _CLASSES[edition]:
        known = ", ".join(_CLASSES[edition])
        faults.append(Fault("survey.site.hazard.site_class", repr(site_class), f"{edition} has {known}"))
    for name, value in (("latitude", site.latitude), ("longitude", site.longitude)):
        if value is None:
            allowed = f"the service is asked by place: the {name} in degrees"
            faults.append(Fault(f"survey.site.{name}", "nothing", allowed))
    if faults:
        raise BadSurvey(tuple(faults))
    assert site.latitude is not None and site.longitude is not None
    asked_as = _CLASSES[edition][site_class]
    return Question(edition, round(site.latitude, 4), round(site.longitude, 4), site.risk_category, asked_as)


def address_of(question: Question, service: str = SERVICE) -> str:
    """The whole address that is asked.

    Raises:
        BadSurvey: when the service's own address is not that of a web server.
    """
    parts = urllib.parse.urlsplit(service)
    if parts.scheme not in ("http", "https") or not parts.hostname or parts.query or parts.fragment:
        allowed = f"the address of a web service, as {SERVICE}"
        raise BadSurvey((Fault("--service", shorten(service), allowed),))
    asked = {
        "latitude": _degrees(question.latitude),
        "longitude": _degrees(question.longitude),
        "riskCategory": question.risk_category,
        "siteClass": question.site_class,
        "title": "house",
    }
    return f"{service.rstrip('/')}/{question.edition}.json?{urllib.parse.urlencode(asked)}"


def _degrees(value: float) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".")


# ---- The answer -----------------------------------------------------------------------------------------------------


def look_up(question: Question, today: date, service: str = SERVICE, timeout_s: float = TIMEOUT_S) -> HazardFound:
    """Ask, and check what comes back.

    Args:
        question: from :func:`question_of`.
        today: the date kept with the values.
        service: the address to ask instead of the public one.
        timeout_s: how long to wait for the next word of the answer, and for the whole of it.

    Raises:
        NoAnswer: with one line that says what went wrong.
        BadSurvey: when the service's own address is not that of a web server.
    """
    url = address_of(question, service)
    who = urllib.parse.urlsplit(url).netloc
    raw = _json(_bytes(url, who, timeout_s), who)
    return _found(question, raw, url, who, today)


class _NoRedirect(urllib.request.HTTPRedirectHandler):
    """Stays with the server that was named."""

    def redirect_request(self, *_: Any, **__: Any) -> None:
        """Follow nothing: the answer that asks to is then an error like any other."""


def _bytes(url: str, who: str, timeout_s: float) -> bytes:
    headers = {"Accept": "application/json", "User-Agent": f"groundsill/{VERSION}"}
    opener = urllib.request.build_opener(_NoRedirect)
    end = time.monotonic() + timeout_s
    parts: list[bytes] = []
    size = 0
    try:
        with opener.open(urllib.request.Request(url, headers=headers), timeout=timeout_s) as response:
            while part := response.read1(65536):
                parts.append(part)
                size += len(part)
                if size > MOST_BYTES:
                    raise _refused(who, f"answered with more than {MOST_BYTES:,} bytes")
                if time.monotonic() > end:
                    raise TimeoutError
    except urllib.error.HTTPError as fault:
        with fault:
            moved = f" and points to {shorten(fault.headers['Location'])}" if 300 <= fault.code < 400 else ""
            raise _refused(who, f"answered {fault.code} {_plainly(fault.reason)}{moved}") from None
    except TimeoutError:
        raise _refused(who, f"gave no whole answer within {timeout_s:g} s") from None
    except urllib.error.URLError as fault:
        if isinstance(fault.reason, TimeoutError):
            raise _refused(who, f"gave no answer within {timeout_s:g} s") from None
        raise _refused(who, f"cannot be reached ({_plainly(fault.reason)})") from None
    except (OSError, http.client.HTTPException, ValueError) as fault:
        raise _refused(who, f"broke off ({type(fault).__name__}: {_plainly(fault)})") from None
    return b"".join(parts)


def _refused(who: str, why: str) -> NoAnswer:
    return NoAnswer(f"the design-value service at {who} {why}; nothing was changed")


def _plainly(reason: object) -> str:
    """A reason in one short line, whatever stands in it."""
    said = getattr(reason, "strerror", None) or str(reason)
    return shorten(said).strip('"')


def _json(data: bytes, who: str) -> dict[str, Any]:
    def no_such_number(text: str) -> Any:
        raise _refused(who, f"answered with {text}, which is no number")

    try:
        raw = json.loads(data.decode("utf-8"), parse_constant=no_such_number)
    except UnicodeDecodeError:
        raise _refused(who, "answered with what is not UTF-8 text") from None
    except json.JSONDecodeError as fault:
        raise _refused(who, f"answered with what is not JSON (line {fault.lineno}, column {fault.colno})") from None
    except (RecursionError, ValueError):
        raise _refused(who, "answered with JSON that is past all reason") from None
    if not isinstance(raw, dict):
        raise _refused(who, f"answered with {shorten(raw)}, not an object")
    return raw


def _part(raw: dict[str, Any], who: str, *keys: str) -> dict[str, Any]:
    """An object inside the answer."""
    inside: Any = raw
    for key in keys:
        inside = inside.get(key) if isinstance(inside, dict) else None
    if not isinstance(inside, dict):
        raise _refused(who, f"answered without {'.'.join(keys)}")
    return inside


def _found(question: Question, raw: dict[str, Any], url: str, who: str, today: date) -> HazardFound:
    request = _part(raw, who, "request")
    if request.get("status") != "success":
        told = raw.get("response") if isinstance(raw.get("response"), str) else request.get("status")
        raise _refused(who, f"answered that it could not: {shorten(told)}")
    _must_answer(question, request, who)
    data = _part(raw, who, "response", "data")
    direct = question.edition == "asce7-22"  # this edition has no coefficients: the design values are the answer
    category = data.get("sdc")
    found = HazardFound(
        edition=question.edition,
        site_class=question.site_class,
        risk_category=question.risk_category,
        latitude=question.latitude,
        longitude=question.longitude,
        S_S=_needed(data, who, "S_S", "ss"),
        S_1=_needed(data, who, "S_1", "s1"),
        T_L=_number(data, who, "T_L", "t-sub-l", "tl"),
        S_MS=_number(data, who, "S_S", "sms"),
        S_M1=_number(data, who, "S_S", "sm1"),
        S_DS=_needed(data, who, "S_DS", "sds") if direct else _number(data, who, "S_DS", "sds"),
        S_D1=_needed(data, who, "S_D1", "sd1") if direct else _number(data, who, "S_D1", "sd1"),
        category=category if isinstance(category, str) and category in tuple("ABCDEF") else "",
        url=url,
        source="",
        when=today.isoformat(),
        remarks=(),
    )
    return replace(found, source=_source(found), remarks=tuple(_remarks(found)))


def _needed(data: dict[str, Any], who: str, field: str, name: str) -> float:
    """A figure without which the answer is none."""
    value = _number(data, who, field, name)
    if value is None:
        raise _refused(who, f"answered without {name}")
    return value


def _number(data: dict[str, Any], who: str, field: str, *names: str) -> float | None:
    """A figure of the answer under the first of its names, within what the survey allows for the field; or none."""
    name = next((name for name in names if data.get(name) is not None), None)
    if name is None:
        return None
    facts, value = member(Hazard, field), data[name]
    assert facts is not None
    assert facts.least is not None
    assert facts.most is not None
    good = isinstance(value, (int, float)) and not isinstance(value, bool)
    if not good or not facts.least <= value <= facts.most:
        allowed = f"it is a number from {facts.least:g} to {facts.most:g}"
        raise _refused(who, f"answered {name} = {shorten(value)}; {allowed}")
    return float(value)


def _must_answer(question: Question, request: dict[str, Any], who: str) -> None:
    """The answer says what it answers; another edition, place or class is no answer."""
    asked: dict[str, object] = {
        "latitude": question.latitude,
        "longitude": question.longitude,
        "riskCategory": question.risk_category,
        "siteClass": question.site_class,
    }
    told = request.get("parameters")
    told = told if isinstance(told, dict) else {}
    document = str(request.get("referenceDocument", "")).lower()
    if document != question.edition:
        raise _refused(who, f"answered by {shorten(request.get('referenceDocument'))}, asked by {question.edition}")
    for name, value in asked.items():
        if name in told and not _same(value, told[name]):
            raise _refused(who, f"answered about {name} {shorten(told[name])}, asked about {value}")


def _same(asked: object, told: object) -> bool:
    if isinstance(asked, float):
        try:
            return abs(float(str(told)) - asked) < 1e-3
        except ValueError:
            return False
    return str(told) == str(asked)


def _source(found: HazardFound) -> str:
    """The sentence kept with the values."""
    public = found.url.startswith(SERVICE)
    place = f"latitude {_degrees(found.latitude)}, longitude {_degrees(found.longitude)}"
    name = SERVICE_NAME if public else f"design-value service at {urllib.parse.urlsplit(found.url).netloc}"
    return (
        f"{name}: {found.edition.replace('asce7', 'ASCE 7')}, site class {found.site_class}, risk category "
        f"{found.risk_category}, {place}; {found.url}"
    )


def _remarks(found: HazardFound) -> Iterator[str]:
    """What a check of the answer against this program's own working shows."""
    if found.T_L is None:
        yield "the service gave no long-period transition T_L; the one in the file stands"
    if found.edition == "asce7-22":
        if found.S_MS is not None and found.S_DS is not None and abs(found.S_MS * 2 / 3 - found.S_DS) > _ROUNDING:
            yield f"S_DS {found.S_DS:g} g is not two thirds of S_MS {found.S_MS:g} g: ask before relying on it"
        return
    try:
        own = site_values(found.S_S, found.S_1, found.site_class).S_DS
    except OutsideLimits as refused:
        yield str(refused)
        return
    if own is None or found.S_DS is None:
        yield "no S_DS is given for this site class and ground motion: ASCE 7-16 11.4.8 asks for a site-specific study"
    elif abs(own - found.S_DS) > _ROUNDING:
        yield f"the service works out S_DS {found.S_DS:g} g, this program {own:.3f} g: ask before relying on either"
    else:
        yield f"the service works out S_DS {found.S_DS:g} g from these values, and so does this program"


# ---- Into the house -------------------------------------------------------------------------------------------------


def held_by(house: House) -> HazardHeld | None:
    """The ground motion that a house holds."""
    hazard = house.survey.site.hazard
    if hazard is None:
        return None
    return HazardHeld(
        hazard.S_S, hazard.S_1, hazard.T_L, hazard.S_DS, hazard.S_D1, hazard.site_class, hazard.source, hazard.when
    )


def beside(house: House) -> tuple[HazardBeside, ...]:
    """The design values by other editions that a house holds."""
    kept = in_order(house.survey.site.design_values)
    return tuple(HazardBeside(v.edition, v.S_DS, v.S_D1, v.source, v.when) for _, v in kept)


def with_found(house: House, found: HazardFound) -> House:
    """A copy of the house with the answer in it; the site class and all else stay as they are.

    Values by the edition the house goes by become its ground motion; by another edition they stand beside it, among the
    design values kept to compare. By ASCE 7-22 the design values are kept as entered. By ASCE 7-16 they follow from S_S
    and S_1, so none is kept: a value entered before belonged to other ground motion.

    Raises:
        NoAnswer: when another edition's answer holds no design value to compare by.
    """
    site = house.survey.site
    if found.edition == edition_of(house):
        return _with_site(house, replace(site, hazard=_motion(site.hazard, found)))
    if found.S_DS is None:
        who = urllib.parse.urlsplit(found.url).netloc
        raise _refused(who, f"gave no S_DS by {found.edition}, so there is nothing to compare by")
    values = {
        "edition": found.edition,
        "S_DS": found.S_DS,
        "S_D1": found.S_D1,
        "S_1": found.S_1,
        "source": found.source,
        "when": found.when,
    }
    id, before = _kept(house, found.edition)
    now = DesignValues(**values) if before is None else replace(before, **values)  # type: ignore[arg-type]
    return _with_site(house, replace(site, design_values={**site.design_values, id: now}))


def _with_site(house: House, site: Site) -> House:
    return replace(house, survey=replace(house.survey, site=site))


def _motion(before: Hazard | None, found: HazardFound) -> Hazard:
    direct = found.edition == "asce7-22"
    new = {
        "S_S": found.S_S,
        "S_1": found.S_1,
        "S_DS": found.S_DS if direct else None,
        "S_D1": found.S_D1 if direct else None,
        "source": found.source,
        "when": found.when,
    } | ({} if found.T_L is None else {"T_L": found.T_L})
    return Hazard(**new) if before is None else replace(before, **new)  # type: ignore[arg-type]


def _kept(house: House, edition: str) -> tuple[str, DesignValues | None]:
    """Where design values by an edition stand in the house, or the id under which they will."""
    values = house.survey.site.design_values
    for id, kept in in_order(values):
        if kept.edition == edition:
            return id, kept
    digest = hashlib.sha256(edition.encode()).hexdigest()
    return next(id for n in range(1, 40) if (id := f"d{digest[: 7 + n]}") not in values), None


_MOTION: Final = ("S_S", "S_1", "T_L", "S_DS", "S_D1", "site_class", "source", "when")
_DESIGN: Final = ("edition", "S_DS", "S_D1", "S_1", "source", "when")


def changes_of(house: House, found: HazardFound) -> tuple[HazardChange, ...]:
    """Every field that the answer would change, as it is and as it would be."""
    after = with_found(house, found).survey.site
    site = house.survey.site
    if found.edition == edition_of(house):
        return tuple(_changed("survey.site.hazard", Hazard, _MOTION, site.hazard, after.hazard))
    id, before = _kept(house, found.edition)
    path = f"survey.site.design_values.{id}"
    return tuple(_changed(path, DesignValues, _DESIGN, before, after.design_values[id]))


def _changed(path: str, cls: type, names: tuple[str, ...], before: object, after: object) -> Iterator[HazardChange]:
    for name in names:
        facts = member(cls, name)
        assert facts is not None
        old, new = (getattr(side, name) if side is not None else None for side in (before, after))
        if old != new:
            yield HazardChange(f"{path}.{name}", facts.label, facts.unit, old, new)
