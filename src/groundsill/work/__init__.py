"""Pieces of work: what a crew would do to the house, as data laid on a survey that is never overwritten.

A piece (panel, bolt, tie, hold-down, splice, strap, side plate, concrete, drainage) has its own id and the ids of what
it touches. ``apply`` lays a list of pieces on a survey and gives the house as designed; a piece whose place has gone is
reported, never dropped. A design, an alternative and the as-built record are each such a list.

Standard library only. Whether the work is enough is judged by ``loadpath``.
"""
