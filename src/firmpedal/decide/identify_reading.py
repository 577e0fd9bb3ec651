"""What somebody says that they measured, read field by field: the figures, and what is wrong where."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.decide.identify import CALLIPERS, COUNTED, TEMPLATE, Measured
from firmpedal.decide.thread_ends import Quantity, known_threads, known_tubes
from firmpedal.model.display import INCH, METRIC, METRIC_LENGTHS, Display
from firmpedal.quantity import Answer, Mark, Value
from firmpedal.units import Dimension, UnitError, from_unit, read, show

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

BLUNTEST = 60  # degrees to a side; beyond it somebody gave the whole cone
BEYOND = 2  # times the largest or smallest of the catalogue: another unit is meant
WHOLE_CONE = "over {} deg to a side there are no seats: give the angle from the axis to the cone's side, {}"
BOTH = "threads per inch and pitch are the same thing: say one of them, not both"
NOT_POSITIVE = "{} has to be more than nothing"
TOO_WIDE = "{} is far wider than anything in the catalogue, where {} is the widest: is it another unit?"
TOO_NARROW = "{} is far narrower than anything in the catalogue, where {} is the least: is it another unit?"
TOO_FEW = "{0} to the inch is far coarser than any thread in the catalogue: if it is the pitch, say {0} mm"
TOO_COARSE = "{} from crest to crest is far coarser than any thread in the catalogue: is it another unit?"


@dataclass(frozen=True)
class Asked:
    """What was measured, as it was typed; a bare length is in `unit`, without which it is refused."""

    outside_diameter: str | None = None
    inside_diameter: str | None = None
    threads: str | None = None
    pitch: str | None = None
    taper: str = Answer.UNKNOWN.value
    seat_angle: str | None = None
    tube: str | None = None
    turns: str | None = None
    accuracy: str | None = None
    angle_accuracy: str | None = None
    counted: str | None = None
    unit: str | None = None
    angle_unit: str | None = None

    def text(self, name: str) -> str | None:
        """What was typed in a field, by its name."""
        found: str | None = getattr(self, name)
        return found


class Heard(NamedTuple):
    """What could be read, and of each field that could not why, by its name."""

    measured: Measured
    faults: dict[str, str]


def heard(asked: Asked) -> Heard:
    """Read every field; one that cannot be used counts as not measured, and says why."""
    faults: dict[str, str] = {}

    def value(name: str, dimension: Dimension, check: Callable[[Value, str], str] = _right) -> Value | None:
        text = asked.text(name)
        found = None if text is None else _value(asked, name, text, dimension)
        words = check(found, text or "") if isinstance(found, Value) else found
        if words:
            faults[name] = words
            return None
        return found if isinstance(found, Value) else None

    length, number, angle = Dimension.LENGTH, Dimension.NUMBER, Dimension.ANGLE
    outside = value("outside_diameter", length, _of_size(Quantity.OUTSIDE))
    inside = value("inside_diameter", length, _of_size(Quantity.INSIDE))
    threads, pitch = value("threads", number, _fine), value("pitch", length, _close)
    if asked.threads is not None and asked.pitch is not None:
        faults["pitch"] = BOTH
    taper = _taper(asked.taper, faults)
    measured = Measured(
        outside,
        inside,
        _pitch_of(threads) if threads is not None else pitch,
        taper,
        value("seat_angle", angle, _half),
        value("tube", length, _of_size(Quantity.TUBE)),
        value("turns", number, _whole),
        value("accuracy", length) or CALLIPERS,
        value("angle_accuracy", angle) or TEMPLATE,
        value("counted", number) or COUNTED,
    )
    return Heard(measured, faults)


def display_of_asked(asked: Asked) -> Display:
    """Lengths as the first one was written."""
    names = ("outside_diameter", "inside_diameter", "tube", "pitch", "accuracy")
    units = (_unit(asked, text) for name in names if (text := asked.text(name)) is not None)
    first = next((unit for unit in units if unit), asked.unit)
    metric = first in METRIC_LENGTHS
    return Display(tuple((METRIC | {Dimension.LENGTH: "mm"} if metric else INCH).items()))


def _unit(asked: Asked, text: str) -> str:
    try:
        return read(text, Dimension.LENGTH, asked.unit).unit
    except UnitError:
        return ""


def _value(asked: Asked, name: str, text: str, dimension: Dimension) -> Value | str:
    """A figure, exact or a range; or why it is none."""
    units = {Dimension.LENGTH: asked.unit, Dimension.ANGLE: asked.angle_unit}
    try:
        span = read(text, dimension, units.get(dimension)).span
    except UnitError as error:
        return str(error)
    return Value(name.replace("_", " "), dimension, span, Mark.MEASURED)


def _right(found: Value, text: str) -> str:
    return "" if found.low > 0 else NOT_POSITIVE.format(text)


def _whole(found: Value, text: str) -> str:
    """Turns by hand may be none at all."""
    return "" if found.low >= 0 else NOT_POSITIVE.format(text)


def _of_size(quantity: Quantity) -> Callable[[Value, str], str]:
    def check(found: Value, text: str) -> str:
        known = known_tubes() if quantity is Quantity.TUBE else known_threads()
        sizes = _sizes(quantity, (each.value(quantity) for each in known))
        least, most = min(low for low, _ in sizes), max(high for _, high in sizes)
        if found.low > BEYOND * most:
            return TOO_WIDE.format(text, _both(most))
        if 0 < found.high < least / BEYOND:
            return TOO_NARROW.format(text, _both(least))
        return _right(found, text)

    return check


def _sizes(quantity: Quantity, values: Iterable[Value | None]) -> list[tuple[float, float]]:
    found = [(value.low, value.high) for value in values if value is not None]
    if not found:
        raise LookupError(f"nothing in the catalogue has a {quantity}")
    return found


def _both(size: float) -> str:
    return f"{show(size, 'in', decimals=3)} or {show(size, 'mm', decimals=1)}"


def _coarsest() -> float:
    return max(high for _, high in _sizes(Quantity.PITCH, (e.value(Quantity.PITCH) for e in known_threads())))


def _fine(found: Value, text: str) -> str:
    if 0 < found.high < from_unit(1, "in") / (BEYOND * _coarsest()):
        return TOO_FEW.format(text.strip())
    return _right(found, text)


def _close(found: Value, text: str) -> str:
    return TOO_COARSE.format(text) if found.low > BEYOND * _coarsest() else _right(found, text)


def _half(found: Value, text: str) -> str:
    if found.high > from_unit(BLUNTEST, "deg"):
        return WHOLE_CONE.format(BLUNTEST, f"half of {text}")
    return _right(found, text)


def _pitch_of(count: Value) -> Value:
    inch = from_unit(1, "in")
    return Value("pitch", Dimension.LENGTH, (inch / count.high, inch / count.low), Mark.MEASURED)


def _taper(text: str, faults: dict[str, str]) -> Answer:
    try:
        return Answer(text.strip().lower())
    except ValueError:
        faults["taper"] = f"{text} is none of yes, no, unknown"
        return Answer.UNKNOWN
