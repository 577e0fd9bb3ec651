"""The pedals of several options side by side: the softest case of each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.report.advice import AS_WRITTEN
from firmpedal.report.feel_pedals import Felt, felt_pedals
from firmpedal.report.feel_plot import Named, options_plot
from firmpedal.report.feel_words import case_words, end_words, travel_words
from firmpedal.report.sheet import Paragraph, Sheet, Table
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

LEAD = (
    "The same foot on every option, each at its softest: hot where it has plastic that runs hot, its hoses "
    "taking all that their standard allows, no air."
)


@worked
def feel_options_sheet(evaluations: tuple[Evaluation, ...]) -> Sheet | None:
    """Set options side by side; None where fewer than two have a pedal that is worked out."""
    found = [
        (_option(evaluation), felt)
        for evaluation in evaluations
        for felt in felt_pedals(evaluation)
        if isinstance(felt, Felt)
    ]
    if len({option for option, _ in found}) < 2:
        return None
    display = evaluations[0].display
    most = max((felt for _, felt in found), key=lambda felt: len(felt.feel.forces))
    forces = [display.value(force) for force in most.feel.forces]
    rows = []
    for option, felt in found:
        case = felt.softest
        cells = [travel_words(felt, case, n, display) for n in range(len(felt.feel.forces))]
        end = end_words(felt, case, display)
        name = f"{option}: {listed(felt.names)}"
        rows.append((name, case_words(felt, case), *cells, *[""] * (len(forces) - len(cells)), end))
    columns = ("option and pedals", "case", *forces, "at its end from")
    table = Table(columns, tuple(rows), frozenset(range(2, len(columns))))
    firsts = {option: Named(option, felt) for option, felt in reversed(found)}
    drawn = options_plot(tuple(reversed(firsts.values())), display)
    blocks: list[Block] = [Paragraph(LEAD), table, drawn]
    return Sheet("Pedal feel of the options", tuple(blocks))


def _option(evaluation: Evaluation) -> str:
    return evaluation.reading.option or AS_WRITTEN
