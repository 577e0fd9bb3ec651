"""Options side by side as a sheet: the answer, the figures, what tells them apart, what to do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.compare import compare
from firmpedal.decide.contest import Outcome
from firmpedal.model.display import listed
from firmpedal.report.advice import advice_blocks, answer, option_name, shortened
from firmpedal.report.findings import where_of
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.to_measure import to_measure
from firmpedal.report.worked import worked
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.decide.compare import Comparison, Row, Separator
    from firmpedal.decide.measures import Cell
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

TITLE = "Options side by side"
FIGURES = "Figure by figure"
ABREAST = 3  # options in one table: more do not fit a page or a screen
LABELS = {
    "verdict": "verdict",
    "worst finding": "worst finding",
    "heat": "plastic lines where it gets hot",
    "components": "components that are joined",
    "leak paths": "places that can leak",
    "joints": "joints",
    "parts": "fittings, nuts and sleeves",
    "lines": "lines",
    "clamps": "clamps",
    "rating over panic foot": "hose, plastic: rating where it runs, over panic foot",
    "yield over panic foot": "metal tube: first yield over panic foot",
    "stroke used": "stroke used at panic foot, hot, no air",
    "mass": "mass, with fluid",
    "to measure": "things to measure",
}
ENDS = {
    Outcome.ALIKE: "alike",
    Outcome.OVERLAP: "no winner: the ranges overlap",
    Outcome.UNKNOWN: "no winner: unknown",
    Outcome.NO_CONTEST: "",
}
# Shares, and how they are said.
SHARES = {
    "rating over panic foot": (1, " times"),
    "yield over panic foot": (1, " times"),
    "stroke used": (100, " %"),
}


@worked
def compare_sheet(evaluations: tuple[Evaluation, ...]) -> Sheet:
    """Compare evaluations of one aircraft: the answer first, what to do last."""
    found = compare(evaluations)
    names = [option_name(option) for option in found.options]
    blocks: list[Block] = [Paragraph(answer(found), Tone.LEAD)]
    blocks += [Heading(FIGURES), *_tables(found, names, evaluations[0].display)]
    blocks.append(Paragraph(_who_can_win(found), Tone.SMALL))
    blocks += _apart(found, names)
    blocks += _unknown(evaluations, found, names)
    blocks += advice_blocks(found)
    return Sheet(TITLE, tuple(blocks), subtitle=", ".join(names))


def _chunks(count: int) -> list[range]:
    return [range(n, min(n + ABREAST, count)) for n in range(0, count, ABREAST)]


def _tables(found: Comparison, names: list[str], display: Display) -> list[Block]:
    tables: list[Block] = []
    for some in _chunks(len(names)):
        rows = tuple(
            (LABELS[row.measure], *(_cell(found, row, n, display) for n in some), _end(row, names))
            for row in found.rows
        )
        columns = ("", *(names[n] for n in some), "best")
        widths = (0.25, *(0.56 / len(some) for _ in some), 0.19)
        tables.append(Table(columns, rows, widths=widths))
    return tables


def _cell(found: Comparison, row: Row, number: int, display: Display) -> str:
    cell = row.cells[number]
    lines = [_figure(row.measure, cell, display), *_about(row.measure, cell)]
    change = found.mass_changes[number] if row.measure == "mass" else None
    if change is not None:
        lines.append(f"{signed(change, display)} from {option_name(found.options[0])}")
    return "\n".join(lines)


def _figure(measure: str, cell: Cell, display: Display) -> str:
    if cell.value is None:
        return "none"
    if measure in ("verdict", "worst finding"):
        return cell.about[0]
    if not cell.value.known:
        return "unknown"
    if measure in SHARES:
        number, unit = SHARES[measure]
        decimals = 2 if number == 1 else 0
        return _range([f"{number * bound:.{decimals}f}" for bound in cell.value.span or ()], unit)
    counted = cell.value.dimension is Dimension.NUMBER
    return f"{cell.value.low:.0f}" if counted else display.value(cell.value)


def _range(bounds: list[str], unit: str) -> str:
    low, high = bounds
    return f"{low if low == high else f'{low} to {high}'}{unit}"


def _about(measure: str, cell: Cell) -> list[str]:
    rest = cell.about[1:] if measure in ("verdict", "worst finding") else cell.about
    return [", ".join(rest)] if rest else []


def signed(value: Value, display: Display) -> str:
    """A change in the builder's units with its sign."""
    if value.span is None:
        return "unknown change"
    parts = [
        ("+" if bound > 0 else "-" if bound < 0 else "") + display.number(abs(bound), value.dimension)
        for bound in value.span
    ]
    return parts[0] if parts[0] == parts[1] else f"{parts[0].split(' ')[0]} to {parts[1]}"


def _end(row: Row, names: list[str]) -> str:
    if row.result.winners:
        return listed([names[n] for n in row.result.winners])
    return ENDS.get(row.result.outcome, "")


def _who_can_win(found: Comparison) -> str:
    words = "Best is only who surely is: where ranges overlap or something is unknown there is no winner."
    standing, out = found.advice.standing, found.advice.out
    if len(standing) < len(found.options):
        names = listed([option_name(found.options[n]) for n, *_ in out])
        words += f" Left out of it, because of a WARNING: {names}."
    elif out:
        words += " Every one of them has a WARNING, so nobody is left out of it."
    return words


def _apart(found: Comparison, names: list[str]) -> list[Block]:
    if not found.separators:
        return [Paragraph("The rules say the same of all of them.")]
    blocks: list[Block] = [Heading("What tells them apart")]
    for some in _chunks(len(names)):
        rows = tuple((_rule(one), *(_said(one.counts[n], one) for n in some)) for one in found.separators)
        widths = (0.52, *(0.48 / len(some) for _ in some))
        blocks.append(Table(("what is found", *(names[n] for n in some)), rows, widths=widths))
    return blocks


def _rule(one: Separator) -> str:
    head = one.level.value if one.level else "to measure"
    return f"{head}: {shortened(one.message)}"


def _said(count: int, one: Separator) -> str:
    if not count:
        return "-"
    if one.level is None:
        return "asks once" if count == 1 else f"asks {count} times"
    return "once" if count == 1 else f"{count} times"


def _unknown(evaluations: tuple[Evaluation, ...], found: Comparison, names: list[str]) -> list[Block]:
    rows = [("all of them", what) for what in found.unknown_in_all]
    shared: dict[str, list[str]] = {}
    for name, own in zip(names, found.unknown_apart, strict=True):
        for what in own:
            shared.setdefault(what, []).append(name)
    rows += [(listed(some), what) for what, some in shared.items()]
    if not rows:
        return []
    places, by_whom = _places(evaluations), dict[str, list[str]]()
    for who, what in rows:
        by_whom.setdefault(who, []).append(f"{what}{places.get(what, '')}")
    blocks: list[Block] = [Heading("What is not known")]
    for who, things in by_whom.items():
        blocks += [Paragraph(f"Of {who}, {len(things)}:"), Bullets(tuple(things), boxes=True)]
    return blocks


def _places(evaluations: tuple[Evaluation, ...]) -> dict[str, str]:
    """Where each thing that is not known belongs, by its words."""
    found: dict[str, str] = {}
    for evaluation in evaluations:
        for one in to_measure(evaluation):
            own = (one.at or one.places[0],) if one.at or one.places else ()
            found.setdefault(one.what, "".join(f" ({where_of(evaluation, place)})" for place in own))
    return found
