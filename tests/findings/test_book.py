"""The rules as they are written down: none without its source, and none that no code asks."""

from __future__ import annotations

from importlib.resources import files

import pytest

from groundsill.findings.book import KNOWN, TOPICS, book

MODULES = {topic: (files("groundsill.findings") / f"{topic}.py").read_text("utf-8") for topic in TOPICS}


@pytest.mark.parametrize("topic", TOPICS)
def test_every_rule_has_a_source_or_says_that_it_has_none(topic):
    told = book(topic)
    for rule in (*told.questions.values(), *told.cures.values()):
        assert rule.known in KNOWN
        assert rule.source.strip()
        if rule.known == "seen":
            assert rule.source.startswith("http")


@pytest.mark.parametrize("topic", TOPICS)
def test_every_rule_is_asked_and_what_cannot_be_told_says_what_would_settle_it(topic):
    told = book(topic)
    for key in (*told.questions, *told.cures, *told.left_alone):
        assert f'"{key}"' in MODULES[topic], key
    assert all(question.settle.strip() or told.words for question in told.questions.values())


@pytest.mark.parametrize("topic", TOPICS)
def test_no_rule_calls_anything_safe(topic):
    text = (files("groundsill.findings") / "rules" / f"{topic}.toml").read_text("utf-8")
    assert "safe" not in text.lower().replace("unsafe", "").replace("iccsafe.org", "")
