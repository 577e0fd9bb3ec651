"""Filling and bleeding as a sheet: which way, how hard, where air stays, what does not help, step by step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding import bleeding
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, all_missing
from firmpedal.report.bleeding_steps import steps_for
from firmpedal.report.bleeding_words import closed_at, foot_words, gravity_words, pot_words
from firmpedal.report.consumables import fluid_rows
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.analysis.bleeding import Bleeding, Bore, Pocket, Rise
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

TITLE = "Filling and bleeding"
MAKER = (
    "What the makers of cylinders, calipers and kit say about filling comes first: which bleeder, which way "
    "round, how far a pedal may go. This sheet adds what follows from your lines."
)
FIRST = (
    "Chock the wheels. Goggles on, rags out, no flame: brake fluid burns, and it harms eyes and paint.",
    "Never open a joint or a bleeder under a foot's pressure.",
    (
        "Blow every tube, hose and drilled passage through with clean dry air. A chip in a cylinder's port, "
        "which is finer than a pencil lead, keeps the brake on."
    ),
    (
        "Look at the first fluid that comes out at the top, on white cloth: as long as it carries chips or "
        "sealant, pump on. Never pour it back."
    ),
    "Have fluid of one kind, from a can that was never open. Do not shake it: that stirs air in.",
)
STAYS = {
    Answer.YES: "no: it goes where the fluid goes, and nowhere else",
    Answer.NO: "yes, but slowly",
    Answer.UNKNOWN: "not sure: push it",
}
CREEPS = (
    "Rising by itself is for a bubble as wide as the bore in an upright line, a minute's worth at most; on a "
    "level stretch it does not move. The last column surely takes air down any slope, at the speed of the "
    "fluid; in bores as thin as these less will do. What bends, fittings and the bleeder's hole use up of "
    "the pressure is not reckoned: keep some in hand."
)
NOT_YET = (
    "How to fill {wheels} cannot be worked out yet: nobody has measured where the lines run. Measure their "
    "points first; the form asks for each."
)
AGAIN = (
    "Done when no bubble comes at the top and every pedal is firm at the same height. Look again next day."
)


def bleeding_of(evaluation: Evaluation) -> Bleeding:
    """Filling and bleeding of one evaluation."""
    return bleeding(evaluation.aircraft, evaluation.filled, evaluation.results)


@worked
def bleeding_sheet(evaluation: Evaluation) -> Sheet | None:
    """The sheet; None where no caliper is joined to anything."""
    found, ways = bleeding_of(evaluation), evaluation.results.heights.ways
    if not ways:
        return None
    before = (
        Paragraph(MAKER, Tone.CAUTION),
        Group((Heading("Before the first fluid"), Bullets(FIRST, boxes=True))),
    )
    if not found.rises:
        words = NOT_YET.format(wheels=listed([way.caliper for way in ways]))
        return Sheet(TITLE, (Paragraph(words, Tone.LEAD), *before))
    blocks: list[Block] = [
        Paragraph(_lead(evaluation, found), Tone.LEAD),
        *before,
        *_fluid(evaluation),
        Heading("What it takes, wheel by wheel"),
        _takes(evaluation, found),
        Heading("Whether air rises by itself"),
        _bores(evaluation, found),
        Paragraph(CREEPS, Tone.SMALL),
        *_pockets(evaluation, found),
        *_useless(evaluation, found),
    ]
    for rise in found.rises:
        steps = Bullets(steps_for(evaluation, found, rise), boxes=True)
        blocks.append(Group((Heading(_heading(evaluation, found, rise)), steps)))
    blocks += [Paragraph(AGAIN), *_wanted(found)]
    return Sheet(TITLE, tuple(blocks))


def _heading(evaluation: Evaluation, found: Bleeding, rise: Rise) -> str:
    before = found.after(rise)
    if before is not None:
        return f"{rise.caliper}: filled on the way from {before.caliper}"
    if closed_at(evaluation, rise):
        return f"{rise.caliper}: from {rise.top} down to the wheel"
    return f"{rise.caliper}: from the wheel up to {rise.top}"


def _lead(evaluation: Evaluation, found: Bleeding) -> str:
    """Which way and how hard, in a sentence or two."""
    places = list(dict.fromkeys(each.near for rise in found.rises for each in found.met(rise)))
    closed = {rise.caliper: where for rise in found.rises if (where := closed_at(evaluation, rise))}
    open_ways = [rise for rise in found.rises if rise.caliper not in closed]
    verdicts = {rise.enough for rise in open_ways}
    far = [rise.caliper for rise in open_ways if found.after(rise) is None]
    up = f"Push fluid up from {listed(far)}: {pot_words(verdicts, evaluation.display)}."
    if closed:
        shut = (
            f"{listed(closed)} cannot be filled from the wheel up: {listed(dict.fromkeys(closed.values()))} "
            "lets nothing up at rest."
        )
        up = f"{shut} {up}" if open_ways else shut
    if not places:
        missing = any(way.missing for way in evaluation.results.heights.ways)
        stays = " Whether air stays on the way is not known yet." if missing else " No high point keeps air."
        return up + stays
    return f"{up} Air stays at {listed(places)}: it has to be carried past there."


def _fluid(evaluation: Evaluation) -> list[Block]:
    rows = fluid_rows(evaluation)
    return [Paragraph(f"To have: {what}, {amount}. Reckoned are {words}.") for what, amount, words in rows]


def _takes(evaluation: Evaluation, found: Bleeding) -> Table:
    show = evaluation.display.value
    rows = tuple(
        (
            rise.caliper,
            f"{', '.join(rise.lines)}, {rise.top}",
            show(rise.volume),
            rise.attitude,
            *_pushed(evaluation, rise),
        )
        for rise in found.rises
    )
    columns = (
        "from",
        "through",
        "the lines hold",
        "stand it",
        "flow",
        "pressure there",
        "one filling within",
    )
    return Table(columns, rows, widths=(0.13, 0.3, 0.11, 0.1, 0.12, 0.12, 0.12))


def _pushed(evaluation: Evaluation, rise: Rise) -> tuple[str, ...]:
    """Flow, pressure and time from the wheel up; nothing where nothing goes up."""
    if closed_at(evaluation, rise):
        return ("not this way", "", "")
    return tuple(evaluation.display.value(value) for value in (rise.flow, rise.pressure, rise.time))


def _bores(evaluation: Evaluation, found: Bleeding) -> Table:
    """Lines of one bore in one row."""
    show = evaluation.display.value
    alike: dict[tuple[str, ...], list[str]] = {}
    for bore in found.bores:
        alike.setdefault(_row(bore, show(bore.bore), show(bore.creep), show(bore.sweep)), []).append(
            bore.line
        )
    rows = tuple((", ".join(lines), *figures) for figures, lines in alike.items())
    columns = ("line", "bore", "does a bubble rise by itself?", "in a minute at most", "surely swept at")
    return Table(columns, rows, widths=(0.34, 0.1, 0.26, 0.15, 0.15))


def _row(bore: Bore, width: str, creep: str, sweep: str) -> tuple[str, ...]:
    if not bore.bond.known:
        return (width, "not known", "not known", sweep)
    return (width, STAYS[bore.stays], "nothing" if bore.stays is Answer.YES else creep, sweep)


def _pockets(evaluation: Evaluation, found: Bleeding) -> list[Block]:
    if not found.pockets:
        return []
    rows = tuple(_pocket_row(evaluation, pocket) for pocket in found.pockets)
    columns = ("where air stays", "attitude", "to go down", "the lines there can hold", "and more inside")
    return [Heading("Where air stays"), Table(columns, rows, widths=(0.3, 0.15, 0.15, 0.2, 0.2))]


def _pocket_row(evaluation: Evaluation, pocket: Pocket) -> tuple[str, ...]:
    show = evaluation.display.value
    return (pocket.near, pocket.attitude, show(pocket.depth), show(pocket.air), ", ".join(pocket.inside))


def _useless(evaluation: Evaluation, found: Bleeding) -> list[Block]:
    """What gravity and a foot cannot do here."""
    items = [gravity_words(evaluation, found, rise) for rise in found.rises]
    met = {(pocket.near, rise.caliper) for rise in found.rises for pocket in found.met(rise)}
    items += [
        foot_words(evaluation, found, each) for each in found.pumping if (each.near, each.caliper) in met
    ]
    said = tuple(dict.fromkeys(item for item in items if item))
    return [Heading("What gravity and a foot can do"), Bullets(said)] if said else []


def _wanted(found: Bleeding) -> list[Block]:
    """What somebody has to measure before the figures that are unknown can be given."""
    missing = dict.fromkeys(each.what for each in all_missing(_figures(found)))
    if not missing:
        return []
    words = "Not worked out before this is known: " + "; ".join(missing)
    return [Paragraph(f"{words}.", Tone.NOTE)]


def _figures(found: Bleeding) -> tuple[Value, ...]:
    rises = (value for rise in found.rises for value in _of(rise))
    pockets = (pocket.air for pocket in found.pockets)
    return (*rises, *pockets, *(bore.bond for bore in found.bores))


def _of(rise: Rise) -> tuple[Value, ...]:
    return (rise.volume, rise.flow, rise.pressure, rise.time)
