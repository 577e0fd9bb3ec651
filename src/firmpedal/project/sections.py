"""What a section must say to make sense by itself: states, units, carriers, the version of the file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.names import choices_text, parted, quoted, suggest
from firmpedal.units import Dimension, UnitError, canonical_unit

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.surroundings import State
    from firmpedal.project.references import References

VERSION = "1"
FRACTIONS = ("16", "32", "1/16", "1/32")


def check_sections(work: References) -> None:
    """Note what is readable word by word and does not make sense together."""
    _version(work)
    _units(work)
    for state in work.aircraft.states:
        _state(work, state)
    _carriers(work, work.aircraft)


def _version(work: References) -> None:
    written = work.aircraft.version
    if written and written != VERSION:
        message = f"this file is written for version {quoted(written)} of the format"
        work.notes.note(work.node("firmpedal"), message, f"this program reads version {VERSION}")


def _units(work: References) -> None:
    for dimension in Dimension:
        word = getattr(work.aircraft.units, dimension.value, "") if dimension.value.isidentifier() else ""
        try:
            canonical_unit(word, dimension) if word else None
        except UnitError as error:
            message, advice = parted(str(error), error.suggestion)
            work.notes.note(
                work.node(f"units.{dimension.value}"), message, advice or choices_text(error.choices)
            )
    written = work.aircraft.units.fractions
    if written and written not in FRACTIONS:
        message = f"{quoted(written)} is not a part of an inch that a tape measure shows here"
        work.notes.note(work.node("units.fractions"), message, suggest(written, FRACTIONS))


def _state(work: References, state: State) -> None:
    """A state is a range or a list of positions; an end that is left out is not known yet."""
    node = work.node(state.place)
    if work.notes.doubtful(state.place):
        return
    if state.values and {"lowest", "highest"} & state.written:
        message = f"{state.name} is either a range or a list of positions, not both"
        work.notes.note(node, message, "take `values`, or `from` and `to`, out")
    elif state.values:
        if state.measured_at and state.measured_at not in state.values:
            message = f"{quoted(state.measured_at)} is not a position of {state.name}"
            place = f"{state.place}.measured at"
            work.notes.note(work.node(place), message, suggest(state.measured_at, state.values))
    else:
        _range(work, state)


def _range(work: References, state: State) -> None:
    low, high = state.lowest, state.highest
    if not (low.known and high.known):
        return
    if low.low > high.high:
        message = f"{state.name} ends before it begins"
        work.notes.note(work.node(f"{state.place}.to"), message, "write the smaller end after `from`")
    elif state.measured_at and not _within(state.measured_at, low.low, high.high):
        message = f"{quoted(state.measured_at)} is no number between the ends of {state.name}"
        work.notes.note(work.node(f"{state.place}.measured at"), message, "write such as `measured at: 0`")


def _within(text: str, low: float, high: float) -> bool:
    try:
        return low <= float(text) <= high
    except ValueError:
        return False


def _carriers(work: References, aircraft: Aircraft) -> None:
    """Things that carry each other round in a circle."""
    carried = {thing.name: thing.carried_by for thing in aircraft.moving}
    said: set[str] = set()
    for name in carried:
        chain = [name]
        while (following := carried.get(chain[-1], "")) and following not in chain:
            chain.append(following)
        if following == name and name not in said:
            said |= set(chain)
            message = f"{quoted(name)} is carried by itself, round in a circle: {' - '.join(chain)}"
            work.notes.note(work.node(f"moving.{name}.with"), message, "take one `with` out")
