"""The survey model: what a practitioner finds at one old house.

`fact` measured, estimated, unknown · `site` hazard, soil, slope · `building` outlines, walls, roof, assemblies ·
`underfloor` lines, wall segments, sills, bolts, what is in the way · `foundation` stretches, breaks, tests ·
`record` observations, photographs, readings · `survey` the whole · `checks` is it complete and sound ·
`settle` each fact on one value · `ranges` what stands in for unknown ones · `plan` and `fits` do the parts fit ·
`model` what the classes say of themselves · `missing` what a survey still lacks · `changes` the log of changes and its
fold · `migrate` older versions opened.
"""
