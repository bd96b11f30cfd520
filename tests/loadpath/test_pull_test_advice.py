"""What the program advises to pull is what it takes as proof."""

from __future__ import annotations

import pytest

from groundsill.loadpath.proof import MOST_MOVED_IN, TESTS_AT_LEAST, TESTS_SHARE
from groundsill.standards.common_practice.pull_tests import table_pull_tests


@pytest.mark.parametrize(
    ("row", "figure"),
    [("fewest", TESTS_AT_LEAST), ("share", TESTS_SHARE), ("movement in inches", MOST_MOVED_IN)],
)
def test_advice_and_proof_go_by_the_same_figures(row: str, figure: float) -> None:
    assert table_pull_tests().read(row) == figure
