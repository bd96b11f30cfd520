"""The survey model: what a practitioner finds at one old house.

`fact` measured, estimated, unknown · `site` hazard, soil, slope · `building` outlines, walls, roof, assemblies ·
`underfloor` lines, wall segments, sills, bolts, what is in the way · `foundation` stretches, breaks, tests ·
`record` observations, photographs, readings · `survey` the whole · `checks` is it complete and sound ·
`changes` the log of changes and its fold · `migrate` older versions opened.
"""
