"""The sources that this evaluation used, and no others."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.finding import Cited
from firmpedal.formulas.references import entry, every_entry
from firmpedal.quantity import Mark
from firmpedal.report.sheet import Paragraph, Sheet, Table
from firmpedal.report.story import MARK_WORDS
from firmpedal.report.sums import main_values
from firmpedal.report.torque import cited_here

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

UNVERIFIED = Mark.MEMORY


def sources_used(evaluation: Evaluation) -> dict[str, frozenset[Mark]]:
    """Every source by key, in the order of the bibliography, with the marks its figures were taken with."""
    found: dict[str, set[Mark]] = {}
    for cited in _all_cited(evaluation):
        found.setdefault(cited.key, set()).add(cited.mark)
    return {key: frozenset(found[key]) for key in every_entry() if key in found}


def _all_cited(evaluation: Evaluation) -> Iterator[Cited]:
    for value in (*main_values(evaluation), *_card_values(evaluation)):
        yield from cited_in(value)
    for finding in evaluation.findings:
        yield from finding.sources
    for joint in evaluation.assembly.joints:
        yield from (Cited(part.source, part.mark) for part in joint.parts if part.source)
    yield from cited_here(evaluation)


def _card_values(evaluation: Evaluation) -> Iterator[Value]:
    """What the cards print beside what the sums explain."""
    for line in evaluation.laid:
        yield from (line.path_length, line.order_length, line.supports.spacing, line.stock.least_bend_radius)
        yield from (height.value for height in line.heights)
        yield from (value for point in line.points for value in point.coordinates)
    for rating in evaluation.results.ratings:
        yield from (rating.cold, rating.hot)


def cited_in(value: Value) -> Iterator[Cited]:
    """The sources in a value's story. A sum's own source is its formula, whatever its figures are worth."""
    if value.source:
        yield Cited(value.source, Mark.DERIVED if value.step else value.mark)
    for _, inner in value.step.inputs if value.step else ():
        yield from cited_in(inner)


def sources_sheet(evaluation: Evaluation) -> Sheet:
    """The sources as a list, with a word of warning where a figure was not verified."""
    rows = tuple(_row(key, marks) for key, marks in sources_used(evaluation).items())
    words = (
        "A figure that was recalled and not seen in its source is marked. Where sources conflict, all "
        "are kept and the safer one is used."
    )
    return Sheet(
        "Sources used", (Paragraph(words), Table(("source", "how we know it"), rows, widths=(0.58, 0.42)))
    )


def _row(key: str, marks: frozenset[Mark]) -> tuple[str, str]:
    reference = entry(key)
    fields = reference.fields
    by = [
        fields[name] for name in ("author", "organization", "publisher", "edition", "year") if name in fields
    ]
    worst = max(marks)
    remark = ""
    if worst >= UNVERIFIED:
        some = "some figures " if min(marks) < UNVERIFIED else ""
        remark = f"\n{some}{MARK_WORDS[worst]}"
    return (f"{reference.title}\n{', '.join(by)}".rstrip(), f"{reference.note}{remark}".strip())
