"""A new foundation inside the old: what no other line has to be asked (ENGINEERING of a strip beside an old footing).

`sides` where the old lines lie · `beside` the old wall, its seating and its brick at the new line's movement, the floor that hangs out beyond it, what
holds the floor up, the trench beside the old footing · `support` the strip as a second support of the floor ·
`strip` the footing as a beam on soil that only pushes, pulled and pressed by its wall · `section` the same footing as
reinforced concrete.
"""
