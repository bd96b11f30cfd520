"""The cautions of the trade: what a paper of this program is and is not, and what can hurt those who do the work."""

from __future__ import annotations

from groundsill.papers.document import Block, BulletList, Paragraph, Remark, strong

__all__ = ["SHORT_CAUTION", "dig_cautions", "limits_blocks", "work_cautions"]

SHORT_CAUTION = (
    "This is an aid to people who know the trade. It does not replace a licensed design professional, the code in "
    "force where the house stands, or the building official. It tells what was checked, against what, and what was "
    "not."
)

_LIMITS = (
    (
        strong("Licensed practice. "),
        "Where the law asks for a licensed engineer or architect, these pages are a draft until that person has "
        "reviewed them, taken charge of them and signed. The program signs nothing.",
    ),
    (
        strong("Local code and official. "),
        "The editions named here may not be the ones in force where the house stands, and towns amend them. The "
        "building official decides what is required and what is accepted.",
    ),
    (
        strong("What a verdict says. "),
        "A link passes when its capacity, by the clause named, is at least the force it is asked to carry, at the "
        "least favourable end of every uncertain fact it uses. A link that cannot be checked has not passed; a "
        "figure that is only indicated, worked out beyond what its standard covers, has not passed either. No paper "
        "can promise how a house will come through an earthquake.",
    ),
    (
        strong("What it stands on. "),
        "Everything follows from one survey of what could be seen and measured. What is inside the concrete, behind "
        "the plaster and under the soil is known only where somebody looked. If the crew finds something else, stop, "
        "tell the designer, and let the figures be worked out again.",
    ),
)

_WORK = (
    (
        "The space under the floor",
        "It can hold stale or foul air, sewer gas, fuel gas, mould, animals, wire and nails. Let it air before going "
        "in, test the air where there is any doubt, never work there alone, keep somebody at the hatch who knows "
        "what to do, and keep the way out clear.",
    ),
    (
        "Taking away support",
        "Before a post, a sill, a wall or a length of foundation is cut or dug under, what it carries is held up by "
        "shoring designed for that load on ground that can bear it. Open short lengths only, and close one before "
        "the next. Nobody goes under a house that stands on jacks alone.",
    ),
    (
        "Dust",
        "Drilling and cutting concrete, brick and mortar throws off silica. Paint of this age usually holds lead; "
        "siding, flues, pipe wrap, floor tile and vermiculite may hold asbestos. Have suspect material tested before "
        "it is disturbed, work wet or under suction, wear the respirator the material asks for, and follow the rules "
        "for clearing up and for carrying it away.",
    ),
    (
        "Gas",
        "Find the shut-off before the first hole is drilled and know who will turn it. A smell of gas means out, no "
        "switches, and a call from outside. Strapping a water heater or a flexible connection is work for somebody "
        "allowed to do it.",
    ),
    (
        "Electricity",
        "Old wiring loses its cover when it is touched; water lies under floors. Find what is live, shut it off and "
        "prove it dead before working near it, and run tools through a ground-fault breaker.",
    ),
    (
        "Digging, and wet ground",
        "A trench wall can fall without warning, sooner when it is wet or filled ground. Have buried lines marked, "
        "keep out water and spoil, slope or shore the sides, never dig below a line falling from the bottom of the "
        "old footing without a designed support, and leave a pit that fills with water or begins to slump.",
    ),
)


def limits_blocks() -> tuple[Block, ...]:
    """What this package is and is not."""
    return (Paragraph(SHORT_CAUTION), BulletList(_LIMITS))


_DIG = (
    (
        "Before the first trench",
        "Have buried lines marked by those who own them and find the drains by hand. Dig one pit beside the old "
        "footing and measure how deep and how wide it is: every trench limit on these pages stands on that.",
    ),
    (
        "The trench beside the old footing",
        "Where the plan says lengths, open every third at a time, no longer than it says, with room for the bars that "
        "stick out, pour it and let it set before the next is opened. Never go below the line that falls from the old "
        "footing's bottom edge. Keep water and spoil out; where soil slumps, the old wall moves or water comes in, "
        "fill the length again, shore, and call the designer.",
    ),
    (
        "Work under a low floor",
        "Trenching, carrying out soil and pouring are done in a confined space: air it, test the air, keep somebody at "
        "the hatch, bring no engine in. Cutting old brick or concrete throws off silica: wet or under suction, with a "
        "respirator. The old foundation carries the floor all the while: nothing is taken from it.",
    ),
)


def dig_cautions() -> tuple[Block, ...]:
    """What can hurt those who lay a new foundation inside an old one."""
    return tuple(Remark("caution", text, title) for title, text in _DIG)


def work_cautions() -> tuple[Block, ...]:
    """What can hurt those who do the work described, one caution for each."""
    return tuple(Remark("caution", text, title) for title, text in _WORK)
