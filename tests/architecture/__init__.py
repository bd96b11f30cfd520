"""The gates: how the code must be built, checked on every run and from the first day.

Each gate is a plain function from a file to faults, tried here on a spoiled sample before it is trusted on the real
code, and each fault names file and line. They pass on an empty package and grow with it.
"""
