"""How numbers carry their reasons: the ground floor that every other room stands on.

``unit`` and ``value`` hold a number with its unit, symbol, origin and marks; ``equation`` turns one published formula
into one small function that records its own working; ``table`` reads figures with their birth certificate; ``source``
names a document; ``sheet`` collects the steps; ``steps`` has the recorded arithmetic between equations; ``render``
writes a step as text, HTML or Typst; ``errors`` is the small tree of refusals.

Standard library only. Nothing here knows what a house is.
"""
