"""The sums behind filling, what a valve shuts in, and the cold, by heading."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.cold import cold_of
from firmpedal.report.bleeding import bleeding_of
from firmpedal.report.cold import slowest
from firmpedal.report.trapped import found_in

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.bleeding import Bleeding
    from firmpedal.analysis.cold import Cold
    from firmpedal.analysis.shut_in import ShutIn
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value


def filling_sums(evaluation: Evaluation) -> tuple[tuple[str, list[Value]], ...]:
    """The values whose sums are printed; a heading without any is left out by who prints."""
    cold = slowest(cold_of(evaluation.aircraft, evaluation.laid, evaluation.results))
    return (
        ("Filling and bleeding", list(_filling(bleeding_of(evaluation)))),
        ("Fluid shut in", [value for each in found_in(evaluation) for value in _shut_in(each)]),
        ("In the cold", [value for each in cold for value in _coldest(each)]),
    )


def _filling(found: Bleeding) -> Iterator[Value]:
    """How thick the fluid is, what each bore does, and what drives each wheel's filling."""
    if not found.rises:
        return
    yield found.viscosity
    for bore in found.bores:
        yield from (bore.bond, bore.sweep)
    for pocket in found.pockets:
        yield pocket.air
    for rise in found.rises:
        yield from (*_parts(rise.friction), rise.column, rise.pressure, rise.time)
    for each in found.pumping:
        yield from (each.stroke, each.between)


def _shut_in(each: ShutIn) -> tuple[Value, ...]:
    return (*_parts_of_rise(each), each.rise, each.degrees, each.slack)


def _parts_of_rise(each: ShutIn) -> tuple[Value, ...]:
    """What has no room and what gives, before the rise that they make."""
    inputs = each.rise.step.inputs if each.rise.step is not None else ()
    return tuple(value for symbol, value in inputs if symbol in ("V_f", "V_t"))


def _coldest(each: Cold) -> tuple[Value, ...]:
    """The longest times: of the slowest wheel on the coldest day that the fluid is known for."""
    return (*_parts(each.rows[0].free), each.rows[0].let_go) if each.rows else ()


def _parts(value: Value) -> tuple[Value, ...]:
    """A sum's parts and then the sum."""
    return (*(inner for _, inner in value.step.inputs), value) if value.step is not None else (value,)
