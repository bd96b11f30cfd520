"""Numbers that show their working.

`value` a number with its unit and doubts · `unit` units as algebra · `equation` one published equation, one function ·
`expression` its body read from source · `steps` recorded arithmetic between equations · `table` printed tables as
data · `sheet` the steps taken · `explain` and `render` the lines a reader sees · `dimensions` proof of units ·
`measure` lengths and forces as people type them · `errors` how the program refuses.

Standard library only; every other room stands on this one.
"""
