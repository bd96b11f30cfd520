"""Writers: blocks and marks in, terminal text, HTML, SVG or a PDF out. They know nothing of houses.

``terminal`` writes plain or coloured text of a given width; ``html`` one self-contained page; ``svg`` a drawing for
the screen or a leaf of paper; ``typst`` a PDF with real mathematics and drawings at true scale. ``escape`` makes any
text harmless, ``numbering`` counts headings, figures and tables once for all of them. Equal input gives equal bytes.
"""
