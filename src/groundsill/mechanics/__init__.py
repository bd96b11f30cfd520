"""Our own statics: what follows from equilibrium and elasticity, whatever document is in force.

Springs in a row and along a beam, bars, beams on springs, sections, a small linear solver, and polygons. Each module is
plain functions on plain floats whose names carry the unit; results satisfy equilibrium to rounding, and the tests
compare them with independent solvers.

Standard library only. Nothing here knows a standard, and no standard is imported here.
"""
