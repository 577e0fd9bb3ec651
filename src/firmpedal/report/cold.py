"""The cold as a sheet: how long brakes take to come on and, above all, to come off with thick fluid."""

from __future__ import annotations

from math import exp
from typing import TYPE_CHECKING

from firmpedal.analysis.cold import GONE, ROLL_BACK, cold_of
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Mark, exactly
from firmpedal.report.plot import Axis, Curve, Limit, plot
from firmpedal.report.sheet import Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.analysis.cold import Chill, Cold
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block, Drawing

TITLE = "In the cold"
WHY = (
    "Cold brakes come on fast and come off slowly. A foot pushes hard; once it is gone, only "
    "the piston seals, which come straight again, push the fluid of the pad gap back up the line."
)
DRAG = "Until the pads are free they drag: do not taxi off with a wheel that turns stiffly, it gets hot."
LIMITS = (
    "Each line counts as one resistance, and what lies behind it as one spring. A long line behind which "
    "little gives empties up to a fifth sooner than said. The pads' time needs no such spring."
)
NO_GIVE = (
    "What {names} and the pads give under pressure is not known and not reckoned: with it the pressure goes "
    "later than said, and a step that overshoots without it may not do so. A dial gauge on the piston's side "
    "tells it."
)
RINGS = (
    "Where a sudden step overshoots, the fluid's inertia counts and sound sets the pace. A foot is slower "
    "than sound, so it is no sudden step."
)
SEALS = "How hard seals push is estimated: time on a cold day how long a wheel takes to turn freely."
STEPS = 60  # points of a curve
FEW = 3  # curves; those of milder days fall too fast to be told apart
NO_RINGING = exactly("damping from which nothing overshoots", Dimension.NUMBER, 1.0, Mark.DERIVED)


@worked
def cold_sheet(evaluation: Evaluation) -> Sheet | None:
    """The sheet; None where the fluid's thickness is not known, or no cylinder presses a wheel."""
    found = cold_of(evaluation.aircraft, evaluation.laid, evaluation.results)
    if not found:
        return None
    blocks: list[Block] = [
        *(Paragraph(_lead(evaluation, each), Tone.LEAD) for each in slowest(found)),
        Paragraph(WHY),
        Paragraph(DRAG, Tone.CAUTION),
    ]
    shown = slowest(found) or found[:1]
    for each in shown:
        blocks += [Heading(f"{each.caliper}, let go by {each.cylinder}"), _table(evaluation, each)]
    blocks += [_picture(evaluation, each) for each in slowest(found) if _drawn(each)]
    blocks += _others(evaluation, [each for each in found if each not in shown])
    sound = f"{RINGS}{_sound(evaluation, shown)}"
    open_ends = [each.caliper for each in found if each.give is None]
    give = [NO_GIVE.format(names=listed(open_ends))] if open_ends else []
    blocks += [Paragraph(words, Tone.SMALL) for words in (f"{SEALS} {LIMITS}", *give, sound)]
    wanted = dict.fromkeys(
        missing.what for each in found for missing in (*each.gap.missing, *each.pressure.missing)
    )
    if wanted:
        blocks.append(Paragraph(f"Not worked out before this is known: {'; '.join(wanted)}.", Tone.NOTE))
    return Sheet(TITLE, tuple(blocks))


def slowest(found: tuple[Cold, ...]) -> tuple[Cold, ...]:
    """The wheel that comes free last in the coldest that is known; none where that is not known."""
    known = [each for each in found if each.rows and each.rows[0].free.known]
    return (max(known, key=lambda each: each.rows[0].free.high),) if known else ()


def _lead(evaluation: Evaluation, cold: Cold) -> str:
    show = evaluation.display.value
    coldest, mild = cold.rows[0], cold.rows[-1]
    return (
        f"At {show(coldest.temperature)} the pads of {cold.caliper} are free only {show(coldest.free)} after "
        f"the foot is gone, at {show(mild.temperature)} after {show(mild.free)}."
    )


def _others(evaluation: Evaluation, others: list[Cold]) -> list[Block]:
    """The other wheels in the coldest, in a line each."""
    show = evaluation.display.value
    return [
        Paragraph(
            f"{each.caliper}, let go by {each.cylinder}: free in {show(each.rows[0].free)} at the coldest."
        )
        for each in others
        if each.rows
    ]


def _sound(evaluation: Evaluation, shown: tuple[Cold, ...]) -> str:
    """How long sound takes, where that is known."""
    known = [each.echo for each in shown if each.echo.known]
    return f" Sound takes {evaluation.display.value(known[0])} there and back." if known else ""


def _table(evaluation: Evaluation, cold: Cold) -> Table:
    show = evaluation.display.value
    rows = tuple(
        (
            f"at {show(row.temperature)}",
            show(row.viscosity),
            show(row.closed),
            _goes(evaluation, cold, row),
            show(row.free),
            _overshoots(cold, row),
        )
        for row in cold.rows
    )
    gone, back = show(GONE), show(ROLL_BACK)
    columns = (
        "how cold",
        "fluid",
        "gap closed in",
        f"down to {gone} in",
        f"pads free in, at {back}",
        "overshoots",
    )
    return Table(columns, rows, widths=(0.15, 0.17, 0.19, 0.18, 0.18, 0.13))


def _goes(evaluation: Evaluation, cold: Cold, row: Chill) -> str:
    """How long the pressure takes to go; with a caliper that gives nobody knows how much, at least."""
    if cold.give is not None or not row.let_go.known:
        return evaluation.display.value(row.let_go)
    return f"{evaluation.display.number(row.let_go.low, row.let_go.dimension)} or more"


def _overshoots(cold: Cold, row: Chill) -> str:
    """Whether a sudden step overshoots there; what gives behind a line damps it."""
    if row.ringing is None:
        return "not known"
    answer = row.ringing.at_most(NO_RINGING)
    if cold.give is None and answer is Answer.YES:  # what the caliper gives may damp it
        return "may"
    return {Answer.YES: "yes", Answer.NO: "no", Answer.UNKNOWN: "may"}[answer]


def _drawn(cold: Cold) -> bool:
    return cold.pressure.known and any(
        row.time_constant.known and row.time_constant.high > 0 for row in cold.rows
    )


def _picture(evaluation: Evaluation, cold: Cold) -> Drawing:
    """Pressure at the wheel after the foot is gone, on the coldest days, at the slowest that it can be."""
    unit = evaluation.display.unit(Dimension.PRESSURE) or "bar"
    rows = [row for row in cold.rows if row.let_go.known and row.time_constant.high > 0][:FEW]
    reach = sorted(row.let_go.high for row in rows)[-2 if len(rows) > 1 else -1]
    start = to_unit(cold.pressure.high, unit)
    how = ", at the slowest" if cold.give else ", without the give of caliper and pads"
    return plot(
        Axis("after the foot is gone, s", 0.0, reach),
        Axis(f"pressure at {cold.caliper}, {unit}", 0.0, start),
        tuple(Curve(evaluation.display.value(row.temperature), _falling(row, start, reach)) for row in rows),
        (Limit(f"let go, {evaluation.display.value(GONE)}", to_unit(GONE.high, unit)),),
        caption=f"Pressure at {cold.caliper} after a hard foot is gone{how}, the coldest days",
    )


def _falling(row: Chill, start: float, reach: float) -> tuple[tuple[float, float], ...]:
    times = (reach * n / STEPS for n in range(STEPS + 1))
    return tuple((time, start * exp(-time / row.time_constant.high)) for time in times)
