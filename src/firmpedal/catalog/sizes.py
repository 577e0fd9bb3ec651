"""What belongs to a dash number and to a thread, and the torques of nuts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from firmpedal.catalog.errors import RecordError
from firmpedal.catalog.records import Row, chosen, load, mark_of, pairs, read_value, rows
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from firmpedal.quantity import Value

_ANY = "any"


@dataclass(frozen=True, slots=True)
class DashSize:
    """One dash number: its threads and every figure found for it, with those in use marked."""

    dash: str  # -4
    thread: str  # 7/16-20
    usual_pipe_thread: str  # what a part number with a single dash means: 1/8-27
    rows: tuple[Row, ...]

    def value(self, name: str, basis: str = _ANY) -> Value | None:
        """Give the figure in use by name, such as `least_bend_radius` for `steel`."""
        found = (row.value for row in self.rows if row.used and (row.name, row.basis) == (name, basis))
        return next(found, None)

    @property
    def outside_diameter(self) -> Value:
        value = self.value("outside_diameter")
        if value is None:
            raise RecordError(self.dash, "no outside diameter")
        return value


@dataclass(frozen=True, slots=True)
class TorqueRow:
    """A torque as one source prints it for a size, with the condition it holds under.

    Where a source prints a turn from finger tight instead, `torque` is that angle.
    """

    dash: str
    joint: str  # coupling nut, hose end
    tube: str  # aluminium, steel: the metal of the tube decides, not that of the nut
    condition: str
    torque: Value
    preferred: bool
    note: str


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread by its short name, with the lengths found for it."""

    name: str  # 1/8-27
    kind: str  # taper pipe, straight, metric parallel
    full_name: str
    dash: str  # of the flared fitting it belongs to, or empty
    rows: tuple[Row, ...]

    def value(self, name: str) -> Value | None:
        """Give a figure by name, such as `major_diameter` or `wrench_turns`."""
        return next((row.value for row in self.rows if row.name == name), None)


@cache
def dash_sizes() -> tuple[DashSize, ...]:
    """Read the dash numbers, smallest first."""
    data = load("sizes.yaml")
    dashes = [str(dash) for dash in data["dashes"]]
    found = rows(data["columns"], dashes, "-{key}", data["measures"])
    chosen(found, "sizes.yaml")
    names = {name: figures for group in data["names"] for name, figures in _named(group, dashes)}
    return tuple(
        DashSize(
            f"-{dash}",
            names["thread"][dash],
            names["usual_pipe_thread"][dash],
            tuple(row for row in found if row.key == dash),
        )
        for dash in dashes
    )


def _named(group: Mapping[str, Any], dashes: list[str]) -> Iterator[tuple[str, dict[str, str]]]:
    """Read columns of names, such as threads, with the same provenance as figures have."""
    mark_of(group, "names")
    for name in group.keys() - {"source", "mark", "note"}:
        yield name, dict(pairs(group[name], dashes, name))


@cache
def torque_rows() -> tuple[TorqueRow, ...]:
    """Read every torque found, those in use among them."""
    dashes = [size.dash[1:] for size in dash_sizes()]
    found = []
    for record in load("torque.yaml")["rows"]:
        dimension = Dimension(record.get("measures", "torque"))
        for dash, figure in pairs(record["values"], dashes, "torque.yaml"):
            label = f"-{dash} {record['joint']} torque, {record['tube']}"
            value = read_value(figure, dimension, label, record)
            found.append(
                TorqueRow(f"-{dash}", record["joint"], record["tube"], record["condition"], value,
                          bool(record.get("used")), record.get("note", ""))
            )  # fmt: skip
    return tuple(found)


@cache
def threads() -> tuple[Thread, ...]:
    """Read the threads of fittings and ports."""
    data = load("threads.yaml")
    records = {record["name"]: record for record in data["threads"]}
    found = rows(data["columns"], records, "{key}", data["measures"])
    return tuple(
        Thread(
            name,
            record["kind"],
            record["full_name"],
            f"-{record['dash']}" if "dash" in record else "",
            tuple(row for row in found if row.key == name),
        )
        for name, record in records.items()
    )
