"""Every design rule: its words, how bad it is, what it rests on, and a file that breaks it."""

from __future__ import annotations

import difflib
import inspect
import tempfile
from pathlib import Path
from types import CodeType, FunctionType
from typing import TYPE_CHECKING

from generator.console import paragraphs, printed
from generator.region import PageError

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
    """The files of tests/rules that break the rule, what puts them right, and one where it cannot tell."""
    paths = sorted((EXAMPLES / rule.name).glob("*.yaml"), key=lambda path: path.stem)
    files = {path.stem: _plain(path) for path in paths}
    fails = [name for name in files if name.startswith("failing")]
    parts = []
    for name in fails:
        head = "A file that breaks it:" if name == fails[0] else "Another:"
        parts += [head, _fenced("text", _said(rule, files[name], f"[{rule.name}]"))]
        parts.append(_folded("the file", "yaml", files[name]))
        right = files.get(name.replace("failing", "passing"))
        if right is not None:
            parts.append(_folded("what puts it right", "diff", _change(files[name], right)))
    unclear = next((text for name, text in files.items() if name.startswith("unknown")), None)
    if unclear is not None:
        parts += ["Where it cannot tell:", _fenced("text", _said(rule, unclear, "Not shown"))]
        parts += [] if fails else [_folded("the file", "yaml", unclear)]
    return parts


def _plain(path: Path) -> str:
    """A file without what its test expects of it: the remarks at its head, and the marks beside lines."""
    lines = path.read_text(encoding="utf-8").splitlines()
    kept = [line.partition("  # <- ")[0].rstrip() for line in lines if not line.startswith("# ")]
    return "\n".join(kept).strip() + "\n"


def _said(rule: Rule, text: str, about: str) -> str:
    """The paragraph of `firmpedal check` with a text in it."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "my.yaml").write_text(text, encoding="utf-8")
        pieces = paragraphs(printed(["check", "my.yaml"], Path(folder)))
    found = [piece for piece in pieces if about in piece]
    if not found:
        raise PageError(f"rules: of a file of tests/rules/{rule.name}, `check` says nothing with `{about}`")
    return found[0]


def _change(one: str, other: str) -> str:
    """The lines that differ, with a little around them."""
    changed = difflib.unified_diff(one.splitlines(), other.splitlines(), n=2, lineterm="")
    return "\n".join(line for line in changed if not line.startswith(("---", "+++", "@@")))


def _fenced(language: str, text: str) -> str:
    return f"```{language}\n{text.rstrip()}\n```"


def _folded(title: str, language: str, text: str) -> str:
    """A piece that opens on a click, so that the page stays short."""
    return f"<details>\n<summary>{title}</summary>\n\n{_fenced(language, text)}\n\n</details>"
