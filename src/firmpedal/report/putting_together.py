"""The order in which everything goes together, as a sheet to tick off: bench, aircraft, torque, closing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.retrofit import bare, from_bare
from firmpedal.decide.step import Action
from firmpedal.report.retrofit import work_blocks
from firmpedal.report.sheet import Paragraph, Sheet, Tone
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

TITLE = "Putting it together"
LEAD = "What goes on before what, from bare components on. The lines are made by their cards first"
LATER = ", except what is bent or flared only in its place."
# Which of two tubes has to go in before the other is not worked out, so it is not said.
TUBES = "Two tubes may block each other's way in: try them bent, with loose nuts, before you clamp either."
# What other sheets deal with.
MADE = frozenset({Action.BUY, Action.MAKE, Action.MAKE_IN_PART, Action.CUT, Action.HAVE_HOSE})


@worked
def putting_together_sheet(evaluation: Evaluation) -> Sheet | None:
    """The work as if nothing were there yet; None where there is nothing to put together."""
    steps = [step for step in from_bare(evaluation) if step.action not in MADE]
    if not evaluation.laid or not steps:
        return None
    later = any(step.action is Action.THREAD_IN for step in steps)
    blocks = (
        Paragraph(f"{LEAD}{LATER if later else '.'}", Tone.LEAD),
        Paragraph(TUBES, Tone.NOTE),
        *work_blocks(steps, bare(evaluation), evaluation),
    )
    return Sheet(TITLE, blocks)
