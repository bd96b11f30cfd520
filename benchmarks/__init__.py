"""What things cost, printed as ratios and growth, since those carry over from one machine to the next.

``make bench`` runs every ``bench_*.py`` here. Each has ``rows()``, which yields :class:`~benchmarks.timing.Row`; see
``README.md``. Run it before and after any change that claims speed.
"""
