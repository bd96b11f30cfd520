"""The commands a person types: thin, each one reads a house file, calls the rooms below and prints the answer.

Exit code 0: done. 1: the verdict asked for is not *passes*. 2: bad input, one numbered line for each fault on stderr
and nothing written. ``--json`` gives machines what the tables give people. Heavy libraries are imported late, so that
``groundsill --help`` feels instant. Nothing is computed here.
"""
