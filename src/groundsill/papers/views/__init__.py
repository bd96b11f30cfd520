"""Views: what a paper says of a finished study, as blocks and drawings.

They choose, order and word what the study and its sheets hold, and work nothing out: every figure printed here stands
in a :class:`~groundsill.study.Study` or on a recorded step. ``calculations`` builds the calculation package from the
other modules; ``forces_view``, ``chain_view`` and ``summary`` also serve the terminal, so that paper and screen agree.
"""
