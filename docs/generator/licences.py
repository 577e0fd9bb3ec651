"""The licences of what is installed, each read from the package's own metadata."""

from __future__ import annotations

import re
import tomllib
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

from generator.region import table

_ROOT = Path(__file__).parents[2]
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")
_CLASSIFIER = "License :: "
_NOT_HERE = "not read yet: it is for another kind of computer"


def page(_argument: str) -> str:
    """Tables of everything that Firmpedal asks for, by what it is for."""
    project = tomllib.loads((_ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    direct = {"To use Firmpedal": project["dependencies"]}
    extras = project["optional-dependencies"]
    direct |= {"To test it": extras["dev"], "To check tube geometry in a test": extras["cad"]}
    parts = [f"## {title}\n\n{_table(_names(wanted))}" for title, wanted in direct.items()]
    named = {name for wanted in direct.values() for name in _names(wanted)}
    rest = [name for name in _pinned() if name not in named]
    parts.append(f"## What those bring along\n\n{_table(rest)}")
    return "\n\n".join(parts)


def _names(wanted: list[str]) -> list[str]:
    return sorted(_folded(_NAME.match(each)[0]) for each in wanted)  # type: ignore[index]


def _folded(name: str) -> str:
    return re.sub(r"[._-]+", "-", name).lower()


def _pinned() -> list[str]:
    """Every package named in constraints.txt, each once."""
    lines = (_ROOT / "constraints.txt").read_text(encoding="utf-8").splitlines()
    pinned = [line.partition("==")[0] for line in lines if line.strip() and not line.startswith("#")]
    return sorted({_folded(name) for name in pinned})


def _installed(name: str) -> Distribution | None:
    try:
        return distribution(name)
    except PackageNotFoundError:
        return None


def _table(names: list[str]) -> str:
    known = _known()
    rows = [(name, _licence(name, known)) for name in names]
    return table(("package", "licence, in its own words"), rows)


def _known() -> dict[str, str]:
    """What the page says already: a package for another kind of computer keeps its row."""
    text = (_ROOT / "docs" / "licences.md").read_text(encoding="utf-8")
    return dict(re.findall(r"^\| ([a-z0-9-]+) \| (.*?) \|$", text, re.MULTILINE))


def _licence(name: str, known: dict[str, str]) -> str:
    found = _installed(name)
    return known.get(name, _NOT_HERE) if found is None else licence_of(found)


def licence_of(found: Distribution) -> str:
    """The licence as the package's metadata states it, the most exact field first."""
    data = found.metadata
    expression = data.get("License-Expression")
    if expression:
        return expression
    classifiers = [
        each.rpartition(" :: ")[2]
        for each in data.get_all("Classifier") or ()
        if each.startswith(_CLASSIFIER)
    ]
    words = (data.get("License") or "").strip()
    if words and "\n" not in words and words != "UNKNOWN":
        return words
    return ", ".join(classifiers) or _file_named(found) or "not stated in the metadata"


def _file_named(found: Distribution) -> str:
    files = found.metadata.get_all("License-File") or ()
    return f"not named; the text is in its file {', '.join(sorted(files))}" if files else ""
