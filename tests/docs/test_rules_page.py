"""Every design rule has words, and a place on the page of rules."""

import pytest
from generator.rules import levels, page
from page_blocks import ROOT

from firmpedal.checks.rules import RULES

PAGE = (ROOT / "docs" / "rules.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_rule_has_words(rule):
    first, _, rest = rule.words.partition("\n\n")
    assert first.endswith("."), "the first line says what should be, in one sentence"
    assert rest.strip(), "then comes why, for who wants to know"


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_rule_is_on_the_page(rule):
    assert f"\n## {rule.name}\n" in PAGE


def test_page_has_no_rule_that_is_gone():
    headings = {line[3:] for line in PAGE.splitlines() if line.startswith("## ")}
    assert headings == {rule.name for rule in RULES}


def test_levels_are_read_from_the_code():
    named = {rule.name: [level.value for level in levels(rule)] for rule in RULES}
    assert named["tube-yields"] == ["WARNING"]
    assert named["end-straight-too-short"] == ["CAUTION", "NOTE"]


def test_rule_without_words_makes_no_page(monkeypatch):
    monkeypatch.setattr(RULES[0].check, "__doc__", "")
    with pytest.raises(Exception, match=f"{RULES[0].name} has no words"):
        page("")
