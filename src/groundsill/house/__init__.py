"""The survey of one house: what was seen, measured, estimated, or could not be seen.

Frozen dataclasses whose fields carry label, unit, help and how to measure; facts with their state and range; the checks
of meaning (does this sill lie on that line, does the outline cross itself); the log of changes and its fold into a
document; migrations from older versions of the house file. Lengths are inches; one plan system and one height datum.

Standard library only. Reading and writing JSON is done by ``doors``.
"""
