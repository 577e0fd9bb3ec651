"""The options of an aircraft side by side: each in a few words, then what tells them apart."""

from __future__ import annotations

from functools import lru_cache
from html import escape
from typing import TYPE_CHECKING

from firmpedal.report.advice import option_name
from firmpedal.report.compare import TITLE, compare_sheet
from firmpedal.report.cover import verdict_line, why_line
from firmpedal.web import addresses
from firmpedal.web.options import options_of
from firmpedal.web.options_forms import begin, rename
from firmpedal.web.pages import report
from firmpedal.web.sheets import written

if TYPE_CHECKING:
    from firmpedal.web.answers import System
    from firmpedal.web.frame import Frame
    from firmpedal.web.options import Option

LEAD = "Every way in which your file says that this aircraft can be built, and which is best at what."
ONE = (
    "This file has one way to build the aircraft. Begin another one above, and both stand side by side here."
)
UNREADABLE = "cannot be read"
MEND = "The text of this option is to be put right first. It is left out of what follows."


@lru_cache(maxsize=16)
def side_by_side(text: str, file: str, option: str | None, system: System | None) -> str:
    """Write the options of a text side by side as HTML; empty where it has none, or cannot be read."""
    found = options_of(text, file, system)
    usable = tuple(each.evaluation for each in found if each.evaluation is not None)
    if len(found) < 2 or not usable:
        return ""
    cards = "".join(_card(each, file) for each in found)
    sheet = written((compare_sheet(usable),), file, option) if len(usable) > 1 else ""
    return f'<div class="fp-abreast">{cards}</div>{sheet}'


def _card(option: Option, file: str) -> str:
    """One option: its name, whether it is sound, and where to go on with it."""
    name, evaluation = option.name, option.evaluation
    if evaluation is None:
        verdict, word, why = "not sound", UNREADABLE, MEND
        ways = [("Go to its text", addresses.step(file, "describe", name))]
    else:
        verdict, word, why = evaluation.verdict.value, verdict_line(evaluation), why_line(evaluation)
        ways = [("Look at it", addresses.step(file, "sound", name))]
        ways += [("Plan the work", addresses.retrofit(file, name))] if name is not None else []
    links = "".join(f'<a class="fp-button" href="{escape(to)}">{escape(words)}</a>' for words, to in ways)
    return (
        f'<section class="fp-card"><h2>{escape(option_name(name))}</h2>'
        f'<p class="fp-verdict-bar" data-verdict="{verdict}"><strong>{escape(word)}</strong></p>'
        f'<p>{escape(why)}</p><div class="fp-actions">{links}</div></section>'
    )


PAGE = report.Report(LEAD, work=side_by_side, titled=True, empty=ONE, beside=(begin,), below=(rename,))


def show(frame: Frame) -> None:
    """Put the page into the frame."""
    report.show(PAGE, frame)


__all__ = ["PAGE", "TITLE", "show", "side_by_side"]
