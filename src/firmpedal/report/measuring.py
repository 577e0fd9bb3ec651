"""The measuring form: every figure still to take, in the order of a walk round the aircraft."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Gear
from firmpedal.model.display import count_of, display_of
from firmpedal.place import is_within
from firmpedal.project.field_places import class_at
from firmpedal.project.names import label_of
from firmpedal.project.unknowns import Item, reads_at, unknowns
from firmpedal.report.cover import datum_words, option_words
from firmpedal.report.measuring_items import doubtful
from firmpedal.report.measuring_places import STATIONS, station_of
from firmpedal.report.measuring_words import ALIKE, asked_blank, blank_of
from firmpedal.report.sheet import (
    Blank,
    Blanks,
    Bullets,
    Drawing,
    Facts,
    Heading,
    Label,
    Paragraph,
    Sheet,
    Stroke,
)
from firmpedal.report.to_measure import to_measure
from firmpedal.report.worked import worked
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

SPARE_ROWS = 4
HOW = (
    "Measure on wheels, pedals neutral, pads new, unless a row says otherwise; chocks in, fairings off.",
    "Aft, right and up count as plus; forward, left and down as minus. To 1/16 in or 1 mm is plenty.",
    "Tape from the datum, a square for what is off to a side, a plumb line to the floor for the rest.",
    "Or go by tape from a place that has a figure already, and write from where.",
    "What stands twice is measured once. Then look at the other side, and say below whether it is alike.",
)


@worked
def form_sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The whole form: how to measure, then station by station, then corners, then what to check."""
    items = unknowns(evaluation.reading)
    blocks = [block for station in STATIONS for block in _station(evaluation, station, items)]
    first = Sheet(
        f"{evaluation.aircraft.aircraft.name}: to measure",
        _lead(evaluation, items),
        subtitle=_subtitle(evaluation),
    )
    sheets = [first, Sheet("Round the aircraft", tuple(blocks), new_page=False)] if blocks else [first]
    return (*sheets, *_corners(evaluation), *_asked(evaluation, items), *_to_check(evaluation))


def _subtitle(evaluation: Evaluation) -> str:
    return f"Brake lines, {option_words(evaluation)}"


def _lead(evaluation: Evaluation, items: tuple[Item, ...]) -> tuple[Block, ...]:
    unit = evaluation.display.unit(Dimension.LENGTH) or ""
    facts = (("datum", datum_words(evaluation.aircraft.datum)), ("lengths", f"{unit}, as in the file"))
    return (
        Paragraph(_count(evaluation, items)),
        Facts(facts),
        axes(evaluation.aircraft.aircraft.gear),
        Bullets(HOW),
    )


def _count(evaluation: Evaluation, items: tuple[Item, ...]) -> str:
    """How much there is to do, counted as everywhere else."""
    things, asked = len(to_measure(evaluation)), len(_asked_besides(evaluation, items))
    if not things:
        return "Nothing is left to measure."
    count = f"{count_of(things, 'thing')} to measure or to look up"
    parts = ((things - asked, "that the file leaves open"), (asked, "that the rules ask for besides"))
    return f"{count}: {', '.join(f'{number} {words}' for number, words in parts if number)}."


def axes(gear: Gear) -> Drawing:
    """The three ways of a point, on a side view and a view from above."""
    nose = [
        (120.0, 60.0),
        (30.0, 52.0),
        (10.0, 40.0),
        (30.0, 28.0),
        (120.0, 30.0),
        (220.0, 44.0),
        (220.0, 72.0),
    ]
    wheel = 55.0 if gear is Gear.TAILWHEEL else 95.0
    third = (205.0, 40.0) if gear is Gear.TAILWHEEL else (25.0, 28.0)
    marks = (
        Stroke((*nose, (205.0, 58.0), nose[0]), 1.2),
        Stroke(((wheel, 28.0), (wheel, 10.0)), 2.0),
        Stroke((third, (third[0], 10.0)), 1.2),
        Stroke(((120.0, 86.0), (180.0, 86.0)), 1.4, arrows=False),
        Stroke(((174.0, 89.0), (180.0, 86.0), (174.0, 83.0)), 1.4),
        Label("aft", (184.0, 86.0), 11, "start", bold=True),
        Stroke(((80.0, 70.0), (80.0, 106.0)), 1.4),
        Stroke(((77.0, 100.0), (80.0, 106.0), (83.0, 100.0)), 1.4),
        Label("up", (86.0, 104.0), 11, "start", bold=True),
        Label("seen from the left", (120.0, -2.0), 9.5),
        Stroke(
            (
                (350.0, 70.0),
                (300.0, 62.0),
                (290.0, 55.0),
                (300.0, 48.0),
                (350.0, 40.0),
                (450.0, 50.0),
                (450.0, 60.0),
                (350.0, 70.0),
            ),
            1.2,
        ),
        Stroke(((340.0, 100.0), (340.0, 10.0)), 3.0),
        Stroke(((380.0, 55.0), (450.0, 55.0)), 0.6, dashed=True),
        Stroke(((390.0, 86.0), (440.0, 86.0)), 1.4),
        Stroke(((434.0, 89.0), (440.0, 86.0), (434.0, 83.0)), 1.4),
        Label("aft", (444.0, 86.0), 11, "start", bold=True),
        Stroke(((360.0, 38.0), (360.0, 8.0)), 1.4),
        Stroke(((357.0, 14.0), (360.0, 8.0), (363.0, 14.0)), 1.4),
        Label("right", (366.0, 12.0), 11, "start", bold=True),
        Label("seen from above", (380.0, -2.0), 9.5),
    )
    shifted = tuple(_lower(mark) for mark in marks)
    return Drawing((480.0, 118.0), shifted)


def _lower(mark: Stroke | Label) -> Stroke | Label:
    """Room at the foot for the words."""
    if isinstance(mark, Label):
        return Label(
            mark.text, (mark.at[0], mark.at[1] + 9), mark.size, mark.anchor, mark.angle, bold=mark.bold
        )
    return Stroke(tuple((x, y + 9) for x, y in mark.points), mark.weight, mark.dashed, mark.arrows)


def _station(evaluation: Evaluation, station: str, items: tuple[Item, ...]) -> list[Block]:
    """One stop on the walk: each thing there with its rows."""
    here: dict[str, list[Item]] = {}
    for item in items:
        if station_of(evaluation.aircraft, item.path) == station:
            here.setdefault(item.owner, []).append(item)
    blanks = [_blanks(evaluation, rows) for rows in here.values()]
    return [Heading(station), *blanks] if blanks else []


def _blanks(evaluation: Evaluation, items: list[Item]) -> Blanks:
    rows = [blank_of(item, evaluation.display) for item in items]
    return Blanks(_title(items), (*rows, ALIKE) if any(item.images for item in items) else tuple(rows))


def _title(rows: list[Item]) -> str:
    images = tuple(dict.fromkeys(image for row in rows for image in row.images))
    return f"{rows[0].owner} (and {', '.join(images)})" if images else rows[0].owner


def _corners(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """Spare rows for the corners of each line that has none yet; mirrored lines follow their originals."""
    tree = evaluation.reading.tree
    lines = tree.entries.get("lines") if tree is not None else None
    own = [line for line in evaluation.aircraft.lines if not line.via and _written(lines, line.name)]
    if not own:
        return ()
    unit = evaluation.display.unit(Dimension.LENGTH) or ""
    row = Blank("from ______________", "or from the datum", (f"aft {unit}", f"right {unit}", f"up {unit}"))
    lead = Paragraph(
        "Lines without corners are taken as straight. Write the crossing of the two straights at each."
    )
    blocks = [Blanks(f"{line.name}, from {line.start} to {line.finish}", (row,) * SPARE_ROWS) for line in own]
    return (Sheet("Corners of the lines", (lead, *blocks)),)


def _written(lines: object, name: str) -> bool:
    node = getattr(lines, "entries", {}).get(name)
    return getattr(node, "via", None) is None


def _asked(evaluation: Evaluation, items: tuple[Item, ...]) -> tuple[Sheet, ...]:
    """What rules wait for besides, each with room for its figure."""
    rows = _asked_besides(evaluation, items)
    lead = Paragraph("Not in the file yet, or known once the rows before are filled in.")
    return (Sheet("Also asked", (lead, Blanks("For the rules", rows)), new_page=False),) if rows else ()


def _asked_besides(evaluation: Evaluation, items: tuple[Item, ...]) -> tuple[Blank, ...]:
    """What rules wait for and no row before covers: keys that the file leaves out, mostly."""
    covered = tuple(path for item in items for path in (item.path, *item.copies))
    tree = evaluation.reading.tree
    dimensions = {
        missing.what: missing.dimension for unclear in evaluation.not_shown for missing in unclear.missing
    }
    rows = []
    for each in to_measure(evaluation):
        if any(_within(place, path) for place in (each.at, *each.places) if place for path in covered):
            continue
        keys = (Item(place, reads_at(tree, place), ()) for place in each.places if tree is not None)
        key = next((item for item in keys if item.reads is not None), None)
        rows.append(asked_blank(each.what, key, dimensions.get(each.what), evaluation.display))
    return tuple(rows)


def _within(place: str, path: str) -> bool:
    """Whether a row of the form has what is missed at a place; a thing as a whole has no one row."""
    whole = place.count(".") == 1 and class_at(place) is not None
    return is_within(place, path) or (not whole and is_within(path, place))


def _to_check(evaluation: Evaluation) -> tuple[Sheet, ...]:
    found = doubtful(evaluation.reading, display_of(evaluation.aircraft.units))
    if not found:
        return ()
    rows = tuple(f"{label_of(path)}: {words}" for path, words in found)
    lead = Paragraph("These stand in the file as a guess or an estimate. Check each.")
    return (Sheet("To check", (lead, Bullets(rows, boxes=True)), new_page=False),)
