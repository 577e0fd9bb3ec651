"""Which torque holds for which pair of metals, for the sizes that are there, and which pairs occur."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from firmpedal.report.nuts import HOSE_END, NUT, STEELS, Tightened, metal_of, torque_used
from firmpedal.report.sheet import Group, Heading, Paragraph, Table, Tone
from firmpedal.report.story import MARK_WORDS

if TYPE_CHECKING:
    from firmpedal.catalog import TorqueRow
    from firmpedal.pipeline import Evaluation

COLUMNS = ("size", "what is tightened", "fitting or nut of aluminium", "fitting and nut of steel")
WIDTHS = (0.09, 0.29, 0.31, 0.31)
FITTINGS = ("aluminium", "steel")
HOSE = "hose end"
TUBES = {
    "aluminium": "tube of aluminium",
    "copper": "tube of copper",
    "steel": "tube of steel, stainless too",
}
KNOWN = (HOSE, *TUBES)
NO_FIGURE = "unknown: no source names this pair"
STAINLESS = "The charts have one row for steel and name no stainless, which is read as steel."
HOSE_NUT = "A hose's nut is taken to be of steel. If yours is of aluminium, the aluminium figure holds."
LOWER = "the metal that its nut goes onto is not known, so the lower figure is taken: look."


def pair_table(evaluation: Evaluation, nuts: tuple[Tightened, ...]) -> Group:
    """Every pair of metals for each size that occurs; what is here says how often."""
    here = Counter((nut.dash, _row(nut), _column(nut)) for nut in nuts)
    rows = []
    for dash in sorted({nut.dash for nut in nuts}, key=lambda dash: int(dash.lstrip("-"))):
        others = {
            nut.tube: f"tube of {nut.tube}" for nut in nuts if nut.dash == dash and _row(nut) not in KNOWN
        }
        for metal, words in {HOSE: HOSE, **TUBES, **others}.items():
            cells = [
                _cell(evaluation, dash, metal, fitting, here[dash, metal, fitting]) for fitting in FITTINGS
            ]
            rows.append((dash, words, *cells))
    return Group(
        (Heading("Which torque for which pair"), Table(COLUMNS, tuple(rows), widths=WIDTHS), *_remarks(nuts))
    )


def _row(nut: Tightened) -> str:
    """Whose nut it is: that of a hose, or of a tube of some metal."""
    if nut.kind == HOSE_END:
        return HOSE
    return "steel" if nut.tube in STEELS else nut.tube or "aluminium"


def _column(nut: Tightened) -> str:
    """Steel where fitting and nut both are; the rest goes with aluminium, as its figure does."""
    return "steel" if nut.fitting in STEELS else "aluminium"


def _cell(evaluation: Evaluation, dash: str, metal: str, fitting: str, count: int) -> str:
    """The figure for a pair, whose figure it is, how sure it is, and how often the pair is here."""
    kind = HOSE_END if metal == HOSE else NUT
    governs = metal_of(fitting) if metal == HOSE else metal_of(metal, fitting)
    used = torque_used(Tightened("", "", "", kind, dash, governs))
    lines = [_figure(evaluation, used, governs)] if used else [NO_FIGURE]
    return "\n".join([*lines, *([f"HERE: {count} {'nut' if count == 1 else 'nuts'}"] if count else [])])


def _figure(evaluation: Evaluation, used: TorqueRow, governs: str) -> str:
    words = [evaluation.display.value(used.torque), f"{governs} figure", MARK_WORDS[used.torque.mark]]
    return "\n".join(word for word in words if word)


def _remarks(nuts: tuple[Tightened, ...]) -> list[Paragraph]:
    """What the table takes for granted, where that matters here."""
    said = [STAINLESS] if any(_row(nut) == "steel" for nut in nuts) else []
    said += [HOSE_NUT] if any((_row(nut), _column(nut)) == (HOSE, "steel") for nut in nuts) else []
    blind = dict.fromkeys(f"{nut.line} at {nut.joint}" for nut in nuts if not nut.fitting)
    said += [f"{', '.join(blind)}: {LOWER}"] if blind else []
    return [Paragraph(" ".join(said), Tone.SMALL)] if said else []
