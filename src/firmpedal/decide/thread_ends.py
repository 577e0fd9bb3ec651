"""What each thread, seat and tube of the catalogue measures: what a builder's figures are held against."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.catalog.records import load, read_value
from firmpedal.formulas.thread_crests import (
    growth_along_taper,
    internal_crest,
    least_external_crest,
    play_of_crests,
)
from firmpedal.model.part import Form
from firmpedal.quantity import Answer, Mark, Step, Value, apply, exactly, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.catalog import Thread

FLARE_37 = "37-degree flare"
FORMS = {"taper pipe": Form.PIPE, "metric parallel": Form.METRIC}  # by the kinds of the catalogue
NO_TAPER = exactly(
    "taper of a parallel thread", Dimension.NUMBER, 0.0, Mark.READ, source="firmpedal-derivation"
)
ALLOWANCE = exactly(  # classes 2A, 3A and 6g, and class A of British parallel pipe threads, lie within it
    "allowance of a thread", Dimension.LENGTH, from_unit(0.002, "in"), Mark.MEMORY, source="common-practice"
)
TAPER_PLAY = exactly(  # one turn of taper is 1/16, the crests may be cut back by up to .126
    "play of a taper thread", Dimension.NUMBER, 1 / 16 + 0.126, Mark.MEMORY, source="asme-b1-20-1"
)
MINOR_PLAY = exactly(  # more than the tolerances of classes 2B, 3B and 6H
    "tolerance of a minor diameter", Dimension.NUMBER, 0.30, Mark.ESTIMATE, source="firmpedal-estimate"
)
TUBE_PLAY = exactly(
    "tolerance of a tube's outside diameter",
    Dimension.LENGTH,
    from_unit(0.003, "in"),
    Mark.MEMORY,
    source="common-practice",
)


class Quantity(StrEnum):
    """What can be measured on a port, a fitting or a tube."""

    OUTSIDE = "outside diameter"
    INSIDE = "inside diameter"
    PITCH = "pitch"
    TAPER = "taper"
    SEAT = "seat angle"
    TUBE = "tube diameter"


@dataclass(frozen=True, slots=True)
class Candidate:
    """A thread with its seat, or a tube: what it measures, each as a range."""

    name: str
    thread: Thread | None
    measures: tuple[tuple[Quantity, Value], ...]
    flare_diameter: Value | None = None
    form: Form | None = None  # what the file writes it as, where fittings for it are known
    size: str = ""

    def value(self, quantity: Quantity) -> Value | None:
        return dict(self.measures).get(quantity)

    @property
    def taper(self) -> Answer:
        value = self.value(Quantity.TAPER)
        if value is None:
            return Answer.UNKNOWN
        return Answer.YES if value.high > 0 else Answer.NO


@cache
def known_threads() -> tuple[Candidate, ...]:
    """Every thread of the catalogue, once for each seat it comes with."""
    return tuple(candidate for thread in catalogue().threads for candidate in _ends(thread))


@cache
def known_tubes() -> tuple[Candidate, ...]:
    """Inch tube by dash number, and metric tube."""
    inch = (
        _tube(f"{_fraction(size.outside_diameter)} in tube ({size.dash})", size.outside_diameter)
        for size in catalogue().sizes
    )
    record = load("threads.yaml")["metric_tube"]
    metric = (
        _tube(f"{text} tube", read_value(text, Dimension.LENGTH, f"{text} tube", record))
        for text in str(record["sizes"]).split(", ")
    )
    return (*inch, *metric)


def _fraction(value: Value) -> str:
    sixteenths = round(value.middle / from_unit(1 / 16, "in"))
    shared = math.gcd(sixteenths, 16)
    return f"{sixteenths // shared}/{16 // shared}"


def _tube(name: str, outside: Value) -> Candidate:
    return Candidate(
        name, None, ((Quantity.TUBE, _either_way(f"outside diameter of {name}", outside, TUBE_PLAY)),)
    )


def _ends(thread: Thread) -> list[Candidate]:
    pitch = _figure(thread, "pitch")
    across = _taper_crests(thread) if thread.value("taper_on_diameter") else _parallel_crests(thread)
    taper = thread.value("taper_on_diameter") or NO_TAPER
    plain = (*across, (Quantity.PITCH, pitch), (Quantity.TAPER, taper))
    seats = _seats(thread)
    name = _plain_name(thread)
    if not seats:
        return [Candidate(name, thread, plain, None, FORMS.get(thread.kind), thread.name)]
    return [
        Candidate(f"{name if flare else thread.name}, {kind}", thread, (*plain, *more), flare, form, dash)
        for kind, more, flare, form, dash in seats
    ]


def _plain_name(thread: Thread) -> str:
    kind = thread.kind if thread.kind != "straight" else "parallel"
    full = thread.full_name.replace("ANPT", "NPT")
    return f"{full}, {kind}" if kind != "parallel" else full


Seat = tuple[str, tuple[tuple[Quantity, Value], ...], Value | None, Form | None, str]


def _seats(thread: Thread) -> list[Seat]:
    """The seats that come with a thread, each with its angle and the tube it takes."""
    found: list[Seat] = []
    size = catalogue().size(thread.dash) if thread.dash else None
    angle = size.value("flare_half_angle") if size else None
    if size and angle:
        measures = ((Quantity.SEAT, angle), (Quantity.TUBE, _tube_of(size.outside_diameter)))
        edge = size.value("flare_diameter")
        found.append((f"{FLARE_37} {size.dash}", measures, edge, Form.FLARE_37, size.dash))
    for basis in dict.fromkeys(row.basis for row in thread.rows if row.name == "seat_half_angle"):
        own = {row.name: row.value for row in thread.rows if row.basis == basis}
        tube = own["tube_outside_diameter"]
        measures = ((Quantity.SEAT, own["seat_half_angle"]), (Quantity.TUBE, _tube_of(tube)))
        form = Form.FLARE_45 if basis == Form.FLARE_45.value else None
        found.append((f"{basis} for {_fraction(tube)} in tube", measures, None, form, _dash_of(tube)))
    return found


def _dash_of(tube: Value) -> str:
    """A flare goes by the dash number of its tube."""
    sizes = catalogue().sizes
    return next((size.dash for size in sizes if math.isclose(size.outside_diameter.low, tube.low)), "")


def _tube_of(outside: Value) -> Value:
    return _either_way(outside.label, outside, TUBE_PLAY)


def _figure(thread: Thread, name: str) -> Value:
    value = thread.value(name)
    if value is None:
        raise LookupError(f"{thread.name} has no {name}")
    return value


def _parallel_crests(thread: Thread) -> tuple[tuple[Quantity, Value], ...]:
    major, pitch = _figure(thread, "major_diameter"), _figure(thread, "pitch")
    least = apply(
        least_external_crest, f"least diameter over {thread.name}",
        major_diameter=major, pitch=pitch, allowance=ALLOWANCE,
    )  # fmt: skip
    minor = apply(
        internal_crest, f"diameter inside {thread.name}",
        crest_diameter=major, thread_height=_figure(thread, "thread_height"),
    )  # fmt: skip
    play = apply(play_of_crests, f"tolerance inside {thread.name}", pitch=pitch, share=MINOR_PLAY)
    most = total(f"largest diameter inside {thread.name}", (minor, play))
    return (
        (Quantity.OUTSIDE, between(f"diameter over {thread.name}", least, major)),
        (Quantity.INSIDE, between(f"diameter inside {thread.name}", minor, most)),
    )


def _taper_crests(thread: Thread) -> tuple[tuple[Quantity, Value], ...]:
    """Over the crests from the small end to the last full thread; inside from the face to as deep as L1."""
    pitch, taper = _figure(thread, "pitch"), _figure(thread, "taper_on_diameter")
    small, height = _figure(thread, "crest_diameter_at_small_end"), _figure(thread, "thread_height")

    def grown(name: str) -> Value:
        length = _figure(thread, name)
        growth = apply(growth_along_taper, f"growth over {length.label}", length=length, taper=taper)
        return total(
            f"{thread.name} diameter over the crests after {name.replace('_', ' ')}", (small, growth)
        )

    play = apply(play_of_crests, f"play of {thread.name}", pitch=pitch, share=TAPER_PLAY)
    outside = between(f"diameter over {thread.name}", small, grown("effective_length"))
    deep, face = (
        apply(internal_crest, f"diameter inside {thread.name}", crest_diameter=each, thread_height=height)
        for each in (small, grown("hand_tight_length"))
    )
    inside = between(f"diameter inside {thread.name}", deep, face)
    return (
        (Quantity.OUTSIDE, _either_way(outside.label, outside, play)),
        (Quantity.INSIDE, _either_way(inside.label, inside, play)),
    )


def between(label: str, low: Value, high: Value) -> Value:
    """A range from the least of one value to the most of another."""
    step = Step("x1 to x2", (("x1", low), ("x2", high)))
    return Value(label, low.dimension, (low.low, high.high), max(low.mark, high.mark), step=step)


def _either_way(label: str, value: Value, play: Value) -> Value:
    step = Step("x +/- e", (("x", value), ("e", play)))
    span = (value.low - play.high, value.high + play.high)
    return Value(label, value.dimension, span, max(value.mark, play.mark), step=step)
