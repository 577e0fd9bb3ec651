"""`firmpedal identify`: what is this port, fitting or tube?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, print_block, print_json
from firmpedal.decide.identify import CALLIPERS, COUNTED, TEMPLATE, Measured, identify
from firmpedal.model.display import INCH, METRIC, METRIC_LENGTHS, Display
from firmpedal.quantity import Answer, Mark, Value
from firmpedal.report.identify import identify_sheet
from firmpedal.report.identify_data import identify_data
from firmpedal.units import Dimension, UnitError, from_unit, read

if TYPE_CHECKING:
    from firmpedal.report.sheet import Sheet

NOTHING = (
    "Nothing was measured. Say at least one of --outside-diameter, --inside-diameter, --threads or --pitch, "
    "--taper, --seat-angle, --tube, --turns: for example --outside-diameter '0.400 in' --threads 27"
)
MEMORY = "* from memory or estimated, not verified against the source"
BLUNTEST = 60  # degrees to a side; beyond it somebody gave the whole cone
WHOLE_CONE = "over {} deg to a side there are no seats: give the angle from the axis to the cone's side, {}"


class AskedError(ValueError):
    """An option that cannot be used; the message is for the person who wrote it."""


@dataclass(frozen=True)
class Asked:
    """What stands on the command line, as text."""

    outside_diameter: str | None = None
    inside_diameter: str | None = None
    threads: str | None = None
    pitch: str | None = None
    taper: str = "unknown"
    seat_angle: str | None = None
    tube: str | None = None
    turns: str | None = None
    accuracy: str | None = None
    angle_accuracy: str | None = None
    counted: str | None = None


def run(asked: Asked, *, as_json: bool) -> int:
    """Identify what was measured; the result is the exit code."""
    try:
        measured = measured_from(asked)
    except (AskedError, UnitError) as error:
        console(error=True).print(Text(str(error)))
        return UNUSABLE
    found = identify(measured)
    if as_json:
        print_json(identify_data(found))
    else:
        _print(identify_sheet(found, _display(asked)))
    return 0 if found.settled else 1


def _print(sheet: Sheet) -> None:
    out = console()
    for block in sheet.blocks:
        print_block(out, block)
    out.print(Text(MEMORY, style="dim"))


def measured_from(asked: Asked) -> Measured:
    """Read the options.

    Raises:
        UnitError: A figure cannot be read; the message says why.
        AskedError: A figure cannot be used; the message says why.
    """
    measured = Measured(
        _positive("--outside-diameter", asked.outside_diameter, Dimension.LENGTH),
        _positive("--inside-diameter", asked.inside_diameter, Dimension.LENGTH),
        _pitch(asked),
        _taper(asked.taper),
        _seat(asked.seat_angle),
        _positive("--tube", asked.tube, Dimension.LENGTH),
        _positive("--turns", asked.turns, Dimension.NUMBER, nothing=True),
        _positive("--accuracy", asked.accuracy, Dimension.LENGTH) or CALLIPERS,
        _positive("--angle-accuracy", asked.angle_accuracy, Dimension.ANGLE) or TEMPLATE,
        _positive("--counted", asked.counted, Dimension.NUMBER) or COUNTED,
    )
    if not measured.anything:
        raise AskedError(NOTHING)
    return measured


def _positive(option: str, text: str | None, dimension: Dimension, *, nothing: bool = False) -> Value | None:
    """Read one figure, exactly or as a range; it has to be more than nothing."""
    if text is None:
        return None
    try:
        span = read(text, dimension).span
    except UnitError as error:
        raise AskedError(f"{option}: {error}") from error
    if span[0] < 0 or (span[0] == 0 and not nothing):
        raise AskedError(f"{option}: {text} has to be more than nothing")
    return Value(option.strip("-").replace("-", " "), dimension, span, Mark.MEASURED)


def _pitch(asked: Asked) -> Value | None:
    if asked.threads is not None and asked.pitch is not None:
        raise AskedError("say --threads (per inch) or --pitch, not both: they are the same thing")
    if asked.threads is None:
        return _positive("--pitch", asked.pitch, Dimension.LENGTH)
    count = _positive("--threads", asked.threads, Dimension.NUMBER)
    if count is None:
        return None
    inch = from_unit(1, "in")
    return Value("pitch", Dimension.LENGTH, (inch / count.high, inch / count.low), Mark.MEASURED)


def _taper(text: str) -> Answer:
    try:
        return Answer(text.strip().lower())
    except ValueError:
        raise AskedError(f"--taper: {text} is none of yes, no, unknown") from None


def _seat(text: str | None) -> Value | None:
    angle = _positive("--seat-angle", text, Dimension.ANGLE)
    if angle is None or angle.high <= from_unit(BLUNTEST, "deg"):
        return angle
    half = f"half of {text}"
    raise AskedError(f"--seat-angle: {WHOLE_CONE.format(BLUNTEST, half)}")


def _display(asked: Asked) -> Display:
    """Lengths as the first one was written."""
    texts = (asked.outside_diameter, asked.inside_diameter, asked.tube, asked.pitch, asked.accuracy)
    written = [read(text, Dimension.LENGTH).unit for text in texts if text is not None]
    metric = bool(written) and written[0] in METRIC_LENGTHS
    return Display(tuple((METRIC | {Dimension.LENGTH: "mm"} if metric else INCH).items()))
