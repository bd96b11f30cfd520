"""How the bolts of a line share what comes down on its sill: plain data for paper, screen and machine.

All forces are in lb at the level that the concrete is checked for. Three states stand beside each other: elastic; with
hole slack, each bolt in the order of contact that is worst for it; and at yield, every joint in wood at its own.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["BoltShare", "JointPull", "LineShares", "PanelShear", "SillShares"]


@dataclass(frozen=True, slots=True)
class BoltShare:
    """What comes on one bolt in each state; ``yield_lb`` is None where what it yields at in wood is not known.

    ``slip_lb_in`` is the force for an inch of slip, ``slack_in`` how far its hole lets it move from side to side,
    ``wood_lb`` what its joint in wood is expected to yield at, and ``even_lb`` an even part of what the bolts of its
    sill piece are left with. With slack it brings no more than that joint bears at the high end of what is expected of
    it: ``slack_held`` says that the springs alone would bring more.
    """

    id: str
    mark: str
    station_in: float
    slip_lb_in: float
    slack_in: float
    wood_lb: float | None
    elastic_lb: float
    slack_lb: float
    yield_lb: float | None
    even_lb: float
    slack_held: bool = False

    @property
    def name(self) -> str:
        """What to call it on paper."""
        return self.mark or self.id

    @property
    def worst_lb(self) -> float:
        """The greatest of what any state, or an even share, brings on it."""
        return max(self.elastic_lb, self.slack_lb, self.yield_lb or 0.0, self.even_lb)


@dataclass(frozen=True, slots=True)
class SillShares:
    """The bolts of one sill piece, and how many of them really work: the whole over the greatest share, state by state.

    None works (0) where no force comes to the piece.
    ``force_lb`` comes down on the piece; ``by_yield`` says whether the wood yields before the concrete breaks at
    expected strengths, so that the bolts may count as sharing at yield, and ``yield_words`` why.
    """

    id: str
    mark: str
    from_in: float
    to_in: float
    stiffness_lb: float
    force_lb: float
    bolts: tuple[BoltShare, ...]
    works_elastic: float
    works_slack: float
    works_yield: float | None
    by_yield: bool = False
    yield_words: str = ""


@dataclass(frozen=True, slots=True)
class JointPull:
    """The force through a joint of the sill, elastic and with hole slack, and what a strap there would need, lb.

    ``tied_by`` is empty where nothing ties the two pieces. ``strap_lb`` is what passes, elastically, if every joint
    were strapped as one piece, at the allowable-stress level that straps are chosen by; None where they do not meet.
    """

    id: str
    station_in: float
    tied_by: str
    pull_lb: float
    slack_lb: float
    strap_lb: float | None


@dataclass(frozen=True, slots=True)
class PanelShear:
    """A stretch of the sill on which a braced part presses, and its unit shear, plf."""

    from_in: float
    to_in: float
    shear_plf: float


@dataclass(frozen=True, slots=True)
class LineShares:
    """The bolts of a line on the springs of their slip.

    ``why`` says why it is looked at so; ``force_lb`` is the line's force at the level that ``level`` names. ``works``
    of ``count`` bolts work as the sill lies, elastically, ``works_as_one`` if it were strapped into one piece. The
    greatest pull or push in the sill is ``axial_lb`` at ``axial_at_in``. ``transfer_in`` is the length beyond a
    panel's end over which what is left in the sill falls to 37 %, at the mean spacing of the bolts. ``unheld_lb`` comes
    down on sill pieces that no bolt holds.
    """

    why: str
    level: str
    force_lb: float
    sills: tuple[SillShares, ...]
    joints: tuple[JointPull, ...]
    panels: tuple[PanelShear, ...]
    count: int
    works: float
    works_as_one: float
    axial_lb: float
    axial_at_in: float
    transfer_in: float | None
    unheld_lb: float
    notes: tuple[str, ...] = ()
