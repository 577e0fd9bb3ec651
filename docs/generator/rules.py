"""Every design rule: its words, how bad it is, what it rests on, and a file that breaks it."""

from __future__ import annotations

import difflib
import inspect
from pathlib import Path
from types import CodeType, FunctionType
from typing import TYPE_CHECKING

from generator.region import PageError
from generator.transcript import paragraphs, printed

from firmpedal.checks.rules import RULES
from firmpedal.finding import Level
from firmpedal.formulas.references import every_entry

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.checks.view import Rule

EXAMPLES = Path(__file__).parents[2] / "tests" / "rules"
_DERIVED = "firmpedal-derivation"


def page(_argument: str) -> str:
    """A list of all rules, then each with its words and examples."""
    index = "\n".join(f"- [`{rule.name}`](#{rule.name}): {_first(rule)}" for rule in RULES)
    return "\n\n".join([index, *(_rule(rule) for rule in RULES)])


def _first(rule: Rule) -> str:
    words = inspect.cleandoc(rule.words)
    if not words:
        raise PageError(f"rules: {rule.name} has no words: give its function a docstring")
    return words.splitlines()[0]


def _rule(rule: Rule) -> str:
    words = inspect.cleandoc(rule.words)
    facts = f"{_levels(rule)}\n\n{_sources(rule)}".strip()
    return "\n\n".join([f"## {rule.name}", words, facts, *_examples(rule)])


def levels(rule: Rule) -> list[Level]:
    """The levels that a rule's own functions name, worst first."""
    names = {name for code in _codes(rule) if "Level" in code.co_names for name in code.co_names}
    return [level for level in Level if level.name in names]


def _levels(rule: Rule) -> str:
    found = levels(rule)
    if not found:
        return "Level: none; it only says what to measure."
    return f"Level: {' or '.join(found)}."


def sources(rule: Rule) -> list[str]:
    """The keys of references.bib that a rule's own functions name."""
    texts = {text for code in _codes(rule) for text in code.co_consts if isinstance(text, str)}
    return [key for key in every_entry() if key in texts and key != _DERIVED]


def _sources(rule: Rule) -> str:
    titles = [every_entry()[key].title for key in sources(rule)]
    return f"Rests on: {'; '.join(titles)}." if titles else ""


def _codes(rule: Rule) -> Iterator[CodeType]:
    """The code of the rule and of every function of the checks that it uses."""
    waiting: list[object] = [rule.check]
    seen: set[int] = set()
    while waiting:
        function = waiting.pop()
        if not isinstance(function, FunctionType) or id(function) in seen:
            continue
        seen.add(id(function))
        for code in _nested(function.__code__):
            yield code
            used = [function.__globals__.get(name) for name in code.co_names]
            waiting += [
                each for each in used if getattr(each, "__module__", "").startswith("firmpedal.checks.")
            ]


def _nested(code: CodeType) -> Iterator[CodeType]:
    yield code
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield from _nested(constant)


def _examples(rule: Rule) -> list[str]:
    """The files of tests/rules that break the rule, what is said about them, and what puts it right."""
    files = sorted((EXAMPLES / rule.name).glob("*.yaml"))
    fails = [path for path in files if path.stem.startswith("fail")]
    passes = [path for path in files if path.stem.startswith("pass")]
    parts = []
    for number, path in enumerate(fails):
        parts += ["What the program says of a file that breaks it:", _fenced("text", _said(rule, path))]
        parts.append(_folded("The file", "yaml", path.read_text(encoding="utf-8")))
        if number < len(passes):
            parts.append(_folded("What puts it right", "diff", _change(path, passes[number])))
    return parts


def _said(rule: Rule, path: Path) -> str:
    """The paragraph of `firmpedal check` that is about this rule."""
    pieces = paragraphs(printed(["check", path.name], path.parent))
    about = [piece for piece in pieces if f"[{rule.name}]" in piece or f"for {rule.name}" in piece]
    if not about:
        raise PageError(f"rules: {rule.name} says nothing of {path.name}, which should break it")
    return about[0]


def _change(one: Path, other: Path) -> str:
    """The lines that differ, with a little around them."""
    texts = [path.read_text(encoding="utf-8").splitlines() for path in (one, other)]
    changed = difflib.unified_diff(*texts, one.name, other.name, n=2, lineterm="")
    return "\n".join(changed)


def _fenced(language: str, text: str) -> str:
    return f"```{language}\n{text.strip()}\n```"


def _folded(title: str, language: str, text: str) -> str:
    """A piece that opens on a click, so that the page stays short."""
    return f"<details>\n<summary>{title}</summary>\n\n{_fenced(language, text)}\n\n</details>"
