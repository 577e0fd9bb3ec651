"""Every formula with its equation and source, from the docstrings that the program itself reads."""

from __future__ import annotations

import inspect
import pkgutil
import re
from importlib import import_module
from typing import TYPE_CHECKING

from generator.region import PageError, table

import firmpedal.formulas
from firmpedal.formulas.references import entry
from firmpedal.quantity import story_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_SOURCE = re.compile(r"Source: \[(?P<key>[^\]]+)\](?:, (?P<where>.*?))?\.?$", re.DOTALL)


def page(_argument: str) -> str:
    """One table for each file of formulas."""
    parts = []
    for name, doc, found in _modules():
        rows = [(f"`{each.__name__}`", f"`{story_of(each).equation}`", _source(each)) for each in found]
        if rows:
            parts.append(f"### {name}\n\n{doc}\n\n" + table(("formula", "equation", "source"), rows))
    if not parts:
        raise PageError("formulas: there are none")
    return "\n\n".join(parts)


def _modules() -> Iterator[tuple[str, str, list[Callable[..., float]]]]:
    for info in pkgutil.iter_modules(firmpedal.formulas.__path__):
        module = import_module(f"firmpedal.formulas.{info.name}")
        functions = [each for _, each in inspect.getmembers(module, inspect.isfunction)]
        public = [each for each in functions if _is_formula(each, module.__name__)]
        ordered = sorted(public, key=lambda each: each.__code__.co_firstlineno)
        yield info.name, (module.__doc__ or "").splitlines()[0], ordered


def _is_formula(function: Callable[..., float], module: str) -> bool:
    own = function.__module__ == module and not function.__name__.startswith("_")
    return own and "Source: [" in (function.__doc__ or "")


def _source(formula: Callable[..., float]) -> str:
    found = _SOURCE.search(inspect.cleandoc(formula.__doc__ or ""))
    if found is None:
        raise PageError(f"formulas: {formula.__name__} names no source at the end of its docstring")
    where = f", {found['where']}" if found["where"] else ""
    return entry(found["key"]).title + where
