"""A new foundation inside the old: what no other line has to be asked.

`stages` what the chain of its line has below the bolts · `sides` where the old lines lie · `beside` the old wall on its
seat, its brick, the floor that hangs out, the trench beside the old footing · `support` what holds the floor up if the
old foundation gives way · `hung_chord` the chords of the floor beyond it · `strip` the footing as a beam on soil that
only pushes, with `worst` its answers · `section` the same footing as reinforced concrete · `lengths` laps and joints of
one poured in lengths · `hung` cross strips that hold it down · `expansive` how it is founded on soil that swells.
"""
