"""How a flare is made, looked at and thrown away: the card that hangs over the bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.finding import Cited
from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Flare
from firmpedal.quantity import Mark, Value
from firmpedal.report.clock import ring
from firmpedal.report.flare_drawings import FAULTS, fault_drawing, joint_drawing
from firmpedal.report.lengths import both, degrees_of, fine, on_tape
from firmpedal.report.practice import practice_count, practice_words, too_few
from firmpedal.report.sheet import (
    BOX,
    Bullets,
    Figure,
    Figures,
    Group,
    Heading,
    Paragraph,
    Sheet,
    Table,
    Tone,
)
from firmpedal.report.story import MARK_WORDS, source_text
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.catalog import DashSize, Row
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

TITLE = "Flaring a tube"
USED = "USE THIS"
SOURCE_WIDTHS = (0.13, 0.21, 0.34, 0.32)
ABOVE_SLEEVE = Value(
    "tube end above its sleeve",
    Dimension.LENGTH,
    (from_unit(1 / 16, "in"), from_unit(1 / 8, "in")),
    Mark.READ,
    source="routing-course",
)
LEAD = "A bad flare is cut off: torque does not mend it."
ROWS = 12  # practice pieces of one tube that the card has a line for
CUT_SHORT = "A flare cut off makes the tube shorter: keep some length until the last end is flared."
# Of each fault: how it comes about, and what is done. Order as drawn.
CAUSES: tuple[tuple[str, str], ...] = (
    ("tube held too low in the block", "It can pull out of the nut. Cut off; hold it higher."),
    ("tube held too high, or turned too far", "It fouls the nut's thread. Cut off; hold it lower."),
    (
        "hard or scratched tube, a blunt cone, no drop of fluid on it",
        "Cut off behind the crack. If the next one cracks too, the tube is too hard.",
    ),
    ("cut not square, or tube not level in the block", "One side does not seal. Cut off square."),
    ("not deburred, or chips on the cone of the tool", "It scores the seat. Cut off; clean tube and tool."),
    (
        "too much reamed away, or the cone screwed down too hard",
        "It cracks later. Cut off; stop when the flare meets the block.",
    ),
)
# Double or single: what was found, each with its source. All disagree; none of them is about brake lines.
FLARE_KINDS: tuple[tuple[str, str, str, Mark], ...] = (
    ("double", "soft aluminium, 1/8 to 3/8 in", "study-cards", Mark.READ),
    ("double", "aluminium, up to 1/2 in", "routing-course", Mark.READ),
    ("double", "soft aluminium, 3/16 to 3/4 in", "tm-1-1500-204", Mark.READ),
    ("double", "aluminium 5/16 and 3/8 in, in oxygen lines", "mil-d-19326h", Mark.READ),
    ("single", "aluminium 1/2 in and all stainless, in oxygen lines", "mil-d-19326h", Mark.READ),
)
KINDS_WORDS = {
    Flare.SINGLE_37: "single 37-degree flares",
    Flare.DOUBLE_37: "double 37-degree flares",
    Flare.SINGLE_45: "45-degree flares, which do not belong in aircraft",
}
UNDECIDED = (
    "They do not agree, and the kit maker's and component makers' word comes before all of them. Make one "
    "kind on all tubes of an aircraft, with a tool for that kind, and say which at flare of each line."
)
LOOK_FOR = ("faa-h-8083-30", Mark.READ)
SQUARE = ("ac-65-9a", Mark.READ)
STEP_SOURCES: tuple[tuple[str, Mark], ...] = (
    SQUARE,
    LOOK_FOR,
    ("routing-course", Mark.READ),
    ("common-practice", Mark.MEMORY),
)


def flare_rows(size: DashSize) -> tuple[Row, ...]:
    return tuple(row for row in size.rows if row.name == "flare_diameter")


def tube_sizes(evaluation: Evaluation) -> tuple[DashSize, ...]:
    """The dash sizes of the flared tubes that are there."""
    dashes = {getattr(line.stock, "dash", None) for line in evaluation.laid if line.tube is not None}
    return tuple(size for size in catalogue().sizes if size.dash in dashes)


def flare_card(evaluation: Evaluation) -> Sheet | None:
    """The card; None where no tube is flared."""
    sizes = tube_sizes(evaluation)
    if not sizes:
        return None
    across = fine(evaluation.display).value(used_diameter(sizes[0]))
    blocks: list[Block] = [
        Paragraph(f"{practice_words(evaluation)} {LEAD}", Tone.LEAD),
        joint_drawing(across, on_tape(ABOVE_SLEEVE, evaluation.display)),
        Figures(tuple(flare_figure(evaluation, size) for size in sizes)),
        Group((Heading("In this order"), Bullets(_steps(evaluation, sizes), boxes=True))),
        Group((Heading("Look at it with a lens, and throw these away"), fault_drawing())),
        Table(("", "fault", "how it comes about", "cure"), _fault_rows(), widths=(0.06, 0.14, 0.36, 0.44)),
        Paragraph(CUT_SHORT),
        _coupons(evaluation),
        *_single_or_double(evaluation),
        *(flare_table(evaluation, size) for size in sizes),
        _step_sources(),
    ]
    return Sheet(TITLE, tuple(blocks))


def used_diameter(size: DashSize) -> Value:
    return next(row for row in flare_rows(size) if row.used).value


def flare_figure(evaluation: Evaluation, size: DashSize) -> Figure:
    """The flare diameter of a size, with a word where nobody has seen it in its source."""
    value = used_diameter(size)
    stands = on_tape(ABOVE_SLEEVE, evaluation.display)
    above = f"the tube end stands {stands} above the seated sleeve"
    note = f"{half_angle(size)} from the axis, never 45\u00b0; {above}"
    doubt = f"; {MARK_WORDS[value.mark]}" if MARK_WORDS[value.mark] else ""
    return Figure(f"{size.dash} flare, across", fine(evaluation.display).value(value), f"{note}{doubt}")


def half_angle(size: DashSize) -> str:
    angle = size.value("flare_half_angle")
    return degrees_of(angle.middle) if angle is not None and angle.known else "37\u00b0"


def _steps(evaluation: Evaluation, sizes: tuple[DashSize, ...]) -> tuple[str, ...]:
    """What is done, in order; the figures are those of the file's own tool where it says them."""
    tool, show = evaluation.aircraft.bench.flaring_tool, evaluation.display
    out = (
        f"{both(tool.stick_out, show)} out of the block, as your file says of this tool"
        if tool.stick_out.known
        else "as far out of the block as this tool wants: try it on a practice piece, write it in the file"
    )
    grip = f", gripped over {both(tool.grip, show)}" if tool.grip.known else ""
    across = "; ".join(f"{fine(show).value(used_diameter(size))} across for {size.dash}" for size in sizes)
    stands = on_tape(ABOVE_SLEEVE, show)
    return (
        "Cut square, with little pressure and many turns: a crooked cut makes a crooked flare.",
        "Deburr inside and outside. Take the edge off, no more: do not thin the wall. Blow the chips out.",
        "Nut on first, thread towards the end. Then the sleeve, head towards the end. Later is too late.",
        f"Into the block: {out}{grip}. Square to it, tight enough not to slip, and no tighter.",
        "A drop of the system's fluid on the cone. Turn it down slowly; stop when the flare meets the block.",
        f"Measure it: {across}. Sleeve up: it stands {stands} above the sleeve, all round alike.",
        "Look at it with a lens: round, even, smooth inside, no crack. Hold it against the faults below.",
        "Rinse, blow through, cap both ends until it is fitted.",
    )


def _fault_rows() -> tuple[tuple[str, ...], ...]:
    return tuple(
        (ring(number), name, cause, cure)
        for number, (name, (cause, cure)) in enumerate(zip(FAULTS, CAUSES, strict=True), 1)
    )


def _coupons(evaluation: Evaluation) -> Group:
    """The pieces to fill in before the first tube, for each kind of tube."""
    columns = ("", "tube", "piece", "tube out of block", "across", "lens: good?", "cut open: good?")
    phrases = dict.fromkeys(line.stock.phrase for line in evaluation.laid if line.tube is not None)
    count = practice_count(evaluation)
    pieces = range(1, min(count, ROWS) + 1)
    rows = tuple((BOX, phrase, str(piece), "", "", "", "") for phrase in phrases for piece in pieces)
    words = (
        "Of the same tube, with the same tool. Saw the third along its length and look at the wall. The "
        "first tube comes after three good ones in a row."
    )
    said = too_few(evaluation)
    words += f" {said}: cut the others from what is left over, or buy tube for them." if said else ""
    words += f" From piece {ROWS + 1} on write on the back." if count > ROWS else ""
    widths = (0.05, 0.25, 0.08, 0.18, 0.15, 0.13, 0.16)
    table = Table(columns, rows, widths=widths, pen=frozenset(range(3, 7)))
    return Group((Heading("Practice pieces"), Paragraph(words), table))


def _single_or_double(evaluation: Evaluation) -> list[Block]:
    """What the sources say, and what the file says of each tube."""
    chosen: dict[Flare, list[str]] = {}
    for line in evaluation.laid:
        declared = find(evaluation.aircraft.lines, line.name)
        if line.tube is not None and declared is not None:
            chosen.setdefault(declared.flare, []).append(line.name)
    here = "; ".join(f"{', '.join(names)}: {KINDS_WORDS[flare]}" for flare, names in chosen.items())
    rows = tuple((kind, what, source_text(source, mark)) for kind, what, source, mark in FLARE_KINDS)
    table = Table(("flare", "for", "source"), rows, widths=(0.13, 0.4, 0.47))
    head = Group((Heading("Single or double?"), Paragraph(f"This file: {here}.")))
    return [head, table, Paragraph(UNDECIDED)]


def flare_table(evaluation: Evaluation, size: DashSize) -> Table:
    """Every flare diameter that was found for a size, the one in use first."""
    show = fine(evaluation.display)
    rows = tuple(
        (
            USED if row.used else "",
            show.value(row.value),
            _with_note("aircraft flare" if row.basis == "any" else row.basis, row.note),
            source_text(row.value.source, row.value.mark),
        )
        for row in flare_rows(size)
    )
    columns = ("", "flare diameter", "for", "source")
    return Table(columns, rows, title=f"{size.dash} flare, all that was found", widths=SOURCE_WIDTHS)


def _with_note(text: str, note: str) -> str:
    return f"{text}\n{note}" if note else text


def _step_sources() -> Paragraph:
    titles = (source_text(key, mark) for key, mark in STEP_SOURCES)
    return Paragraph(f"The order of work and the faults are from: {'; '.join(titles)}.", Tone.SMALL)


def cited_on_card(evaluation: Evaluation) -> Iterator[Cited]:
    """Every source that the card prints."""
    sizes = tube_sizes(evaluation)
    if not sizes:
        return
    for size in sizes:
        yield from (Cited(row.value.source, row.value.mark) for row in flare_rows(size))
    yield Cited(ABOVE_SLEEVE.source, ABOVE_SLEEVE.mark)
    yield from (Cited(key, mark) for key, mark in STEP_SOURCES)
    yield from (Cited(source, mark) for _, _, source, mark in FLARE_KINDS)
