"""The published documents: the only home of published equations and figures.

One package for each document and edition (for instance ``asce7_16``, ``nds_2018``, ``sdpws_2015``, ``aci318_19``); in
it one module for each chapter or clause group, with the document's own symbols and numbering, and its tables beside it
as data files that say how each figure is known. Misprints stand in an errata file: printed value, used value, why. A
superseded edition stays, marked, since a house file pins the editions it was designed by.

``catalogue`` finds any formula or table by its number, its trade name or its words, and works it out; ``basis`` says
which editions a building code brings with it. Importing this package imports none of the documents: the catalogue
opens one when it is asked for. Standard library only. Choosing which equation applies is the work of the rooms above.
"""

from __future__ import annotations
