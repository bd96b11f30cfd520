"""The chain as a picture: the band is as high as what is carried; shapes and words tell every verdict."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.loadpath.chain import Chain
from groundsill.papers.document import Figure
from groundsill.papers.drawing import Circle, Drawing, Line, Polygon, Text
from groundsill.papers.views.strip_view import BAND, Row, stage_link, stage_verdict, strip_figure
from groundsill.papers.writers.svg import paper_svg
from tests.papers.views_sample import chain, link, one_of_each, stage


def drawn(found: Chain, name: str = "as found") -> Drawing:
    figure = strip_figure("L1 front", [Row(name, found)])
    assert isinstance(figure.drawing, Drawing)
    return figure.drawing


def heights(drawing: Drawing, layers: tuple[str, ...] = ("chain", "chain weakest")) -> list[float]:
    """The heights of the band, cell by cell."""
    found = []
    for mark in drawing.marks:
        if isinstance(mark, Polygon) and mark.layer.name in layers:
            ys = [y for _, y in mark.points]
            found.append(round(max(ys) - min(ys), 6))
    return found


def said(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Text)]


@pytest.mark.parametrize(("used", "part"), [(0.2, 1.0), (1.0, 1.0), (2.0, 0.5), (8.0, 0.125)])
def test_the_band_is_as_high_as_the_part_of_the_force_that_is_carried(used: float, part: float) -> None:
    only = link("floor", "passes" if used <= 1 else "fails", ratio=used, least_favourable=used)
    assert heights(drawn(chain(stage("floor", only)))) == [round(BAND * part, 6)]


def test_the_band_breaks_where_nothing_is_carried() -> None:
    nothing = link("sill-bolts", "fails", capacity=0.0, ratio=None, least_favourable=None)
    drawing = drawn(chain(stage("sill-bolts", nothing)))
    assert heights(drawing) == []
    assert sum(isinstance(m, Line) and m.layer.name == "chain" for m in drawing.marks) == 2


def test_indicated_is_hatched_and_unknown_is_an_empty_dashed_frame() -> None:
    drawing = drawn(one_of_each())
    fills = [m.fill for m in drawing.marks if isinstance(m, Polygon) and m.layer.name in ("chain", "chain weakest")]
    assert fills == ["tint", "tint", "tint", "hatched"]
    (unknown,) = [m for m in drawing.marks if isinstance(m, Polygon) and m.layer.name == "chain unknown"]
    assert (unknown.fill, unknown.layer.line_type) == ("none", "dashed")


def test_only_the_governing_link_stands_in_a_heavy_frame() -> None:
    weakest = [m for m in drawn(one_of_each()).marks if m.layer.name == "chain weakest"]
    assert len(weakest) == 1
    assert weakest[0].layer.weight > 50


def test_the_least_favourable_case_is_drawn_inside_the_band() -> None:
    lines = [m for m in drawn(one_of_each()).marks if m.layer.name == "chain least favourable"]
    assert len(lines) == 2
    (a, b) = (m.start[1] for m in lines if isinstance(m, Line))
    assert abs(a - b) == pytest.approx(BAND / 1.25)


def test_every_verdict_has_a_shape_of_its_own_beside_its_words() -> None:
    drawing = drawn(one_of_each())
    assert {"passes", "fails", "depends", "indicated"} <= set(said(drawing))
    assert "cannot be" in " ".join(said(drawing))
    signs = [m for m in drawing.marks if m.layer.name.startswith("chain sign")]
    assert sum(isinstance(m, Circle) and m.fill == "ink" for m in signs) == 1  # passes
    assert sum(isinstance(m, Circle) and m.fill == "none" for m in signs) == 1  # depends
    assert sum(m.layer.name == "chain sign, fails" for m in signs) == 2  # a cross


def test_a_stage_that_does_not_apply_in_any_state_takes_no_room() -> None:
    assert "Plate" not in said(drawn(one_of_each()))


def test_a_stage_of_one_state_alone_is_a_plain_line_in_the_other() -> None:
    before = chain(stage("floor", link("floor", "passes")))
    after = chain(stage("floor", link("floor", "passes")), stage("blocking", link("blocking", "passes")))
    figure = strip_figure("L1", [Row("as found", before), Row("designed", after)])
    assert isinstance(figure.drawing, Drawing)
    assert len(heights(figure.drawing)) == 3
    assert said(figure.drawing).count("Blocking") == 1
    assert "does not" in " ".join(said(figure.drawing))


def test_the_words_for_those_who_cannot_see_tell_stage_link_verdict_ratio_and_the_weakest() -> None:
    figure = strip_figure("L1 front", [Row("as found", one_of_each())])
    assert figure.alternative == (
        "as found: Floor: passes, ratio 0.50; Sheathing: depends, ratio 0.90; Sill bolts (bolts in sill K1): fails, "
        "ratio 2.00, the weakest; Concrete: indicated, ratio 0.40; Joints: cannot be checked."
    )


def test_a_stage_is_stood_for_by_the_link_that_bears_out_its_verdict() -> None:
    mixed = stage(
        "sill-bolts", link("sill-bolts", "passes", "K1", ratio=0.99), link("sill-bolts", "cannot be checked", "K2")
    )
    assert stage_verdict(mixed) == "cannot be checked"
    shown = stage_link(mixed)
    assert shown is not None
    assert shown.title == "K2"


def test_names_of_stages_never_run_into_each_other() -> None:
    titles = ("Floor boards at the line", "Top plate splices and collectors", "Overturning at the ends of each segment")
    found = chain(*(stage(f"s{n}", link(f"s{n}", "passes"), title=titles[n % 3]) for n in range(11)))
    heads = [m for m in drawn(found).marks if isinstance(m, Text) and m.size == 7.5]
    by_height: dict[float, list[Text]] = {}
    for mark in heads:
        by_height.setdefault(round(mark.at[1], 3), []).append(mark)
    from groundsill.papers.letters import text_width

    for row in by_height.values():
        ordered = sorted(row, key=lambda m: m.at[0])
        for left, right in zip(ordered, ordered[1:], strict=False):
            room = (text_width(left.text, 7.5) + text_width(right.text, 7.5)) / 2 / 72
            assert right.at[0] - left.at[0] >= room, (left.text, right.text)


def test_a_line_without_any_link_is_still_a_picture_with_words() -> None:
    figure: Figure = strip_figure("L9", [Row("as found", chain())])
    assert figure.alternative == "as found: no link applies."


def test_the_strip_can_be_inked() -> None:
    from groundsill.papers.placing import leaf_of_drawing
    from groundsill.papers.sheet import FULL_SIZE

    leaf = leaf_of_drawing(drawn(replace(one_of_each(), name="front")), FULL_SIZE)
    assert leaf.width <= 5.6 * 72  # the measure of an A4 page, and its hair of margin
    assert "<svg" in paper_svg(leaf)
