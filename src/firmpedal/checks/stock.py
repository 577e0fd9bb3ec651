"""The rule about tube longer than tube is sold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Finding, Level
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer, Mark, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.quantity import Value

RULE = "tube-longer-than-stock"
COMMON_STICK = 6  # feet; from memory: what is shipped, where the mill's twelve feet are not
MILL_LENGTH = 12


def tube_longer_than_stock(view: View) -> Iterator[Outcome]:
    """A tube is no longer than the longest piece that can be had.

    Where the file does not say what can be had, a tube over six feet is a note: tube is mostly shipped in
    such pieces.
    """
    longest = view.aircraft.bench.longest_tube
    for line in view.laid:
        cut = line.cut_length
        if line.kind is not LineKind.TUBE or cut is None:
            continue
        if "longest_tube" in view.aircraft.bench.written:
            yield from _against_declared(view, line, cut, longest.named("longest piece of tube to be had"))
        elif not _in_hand(view, line, cut):
            yield from _against_common(view, line, cut)


def _against_declared(view: View, line: LaidLine, cut: Value, longest: Value) -> Iterator[Outcome]:
    dash, mill = getattr(line.stock, "dash", None) or "", view.display.feet(MILL_LENGTH)
    yield from judge(
        Limit(cut, longest, "at most"),
        rule=RULE,
        level=Level.CAUTION,
        place=line.place,
        message=f"{line.name} is cut {view.show(cut)} long, and the longest piece to be had is "
        f"{view.show(longest)}",
        tries=(
            f"a union (AN815{dash}, with two more nuts and sleeves) where a hatch lets you see and reach it",
            f"ask for it in one piece: mill length is {mill}, and soft tube is sold in coils too",
        ),
    )


def _against_common(view: View, line: LaidLine, cut: Value) -> Iterator[Outcome]:
    common = exactly(
        "common length of tube as shipped",
        Dimension.LENGTH,
        from_unit(COMMON_STICK, "ft"),
        Mark.MEMORY,
        source="common-practice",
    )
    limit = Limit(cut, common, "at most")
    if limit.kept is not Answer.NO:  # nothing was declared, so nothing is asked either
        return
    over_mill = cut.low > from_unit(MILL_LENGTH, "ft")
    mill, short = view.display.feet(MILL_LENGTH), view.display.feet(COMMON_STICK)
    piece = f"longer than the {mill} that mills make: a coil" if over_mill else f"a {mill} piece"
    for outcome in judge(
        limit,
        rule=RULE,
        level=Level.NOTE,
        place=line.place,
        message=f"{line.name} is cut {view.show(cut)} long: it takes {piece}, not a {short} one",
        tries=("make sure of the piece before you plan on it, and write it at longest tube of your bench",),
    ):
        if isinstance(outcome, Finding):
            yield outcome


def _in_hand(view: View, line: LaidLine, cut: Value) -> bool:
    """Whether a piece of this very tube lies there that is long enough."""
    return any(
        cut.at_most(piece) is Answer.YES
        for tube in view.aircraft.bench.tube
        if tube.made_of.phrase == line.stock.phrase
        for piece in tube.pieces
    )
