"""Findings: what the survey tells of the foundation, what of it matters, and what can be left alone.

A finding weighs one thing that was seen three times apart: for the weight of the house, for an earthquake, for the life
of the structure. Each weighing stands on questions with three answers (yes, no, cannot tell), whose words, sources and
remedies are data in ``rules/``; the code only asks them. In: a survey. Out: findings, worst first.

`answer` the three answers · `finding` what a finding is · `book` the rules as they are written down · `asking` what
every topic does alike · `cracks` cracks, cold joints and gaps · `footings` size, frost and pressure of any footing ·
`concrete` · `masonry` brick and stone · `sills` the sill and old bolts · `framing` posts, cuts, old bracing · `lean`
foundations that lean · `standing` where the load of one comes down · `ground_beside` what of the ground may have turned
it · `soil` soil against the wood · `air_gap` the fence that holds soil off it · `worked` what was worked out, line by
line · `monitors` gauges and marks read over time, by `trend` and `statistics` · `levels` the level survey, by `shape` ·
`noted` what the surveyor wrote and no topic reads · `unseen` what nobody looked at · `found` all of them, in order.
"""

from __future__ import annotations

from groundsill.findings.finding import Cure, Finding, Judgement, Reason, Weight
from groundsill.findings.found import Findings, findings_of

__all__ = ["Cure", "Finding", "Findings", "Judgement", "Reason", "Weight", "findings_of"]
