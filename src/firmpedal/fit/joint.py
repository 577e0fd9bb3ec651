"""What a joint asks for and what the search answers, as frozen data."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.hashing import HashKept, hash_kept

if TYPE_CHECKING:
    from firmpedal.model.part import Interface, Part


@dataclass(frozen=True, slots=True)
class LineEnd:
    """What one end of a line brings to a joint, and what its builder asked for there.

    `leaves` is the angle in radians between the way the port faces and the first length of the
    line, None where either is not known. `turn` is a declared body angle in radians; `fittings`
    are declared designations in order from the port to the line; `material` is the metal the
    builder wants for the fittings, empty for no wish. `points` is the angle in radians between the way
    the port faces and the way in which the builder says that its elbow points.
    """

    line: str
    end: str  # "from" or "to"
    interface: Interface
    group: str  # aluminium, steel, hose, plastic: like metal goes with like
    leaves: float | None = None
    turn: float | None = None
    fittings: tuple[str, ...] = ()
    material: str = ""
    points: float | None = None

    @property
    def place(self) -> str:
        return f"lines.{self.line}.{self.end}"


@dataclass(frozen=True, slots=True)
class Port:
    """A port of a component; `closed` asks for a plug where no line comes."""

    place: str  # components.left_cylinder.ports.outlet
    name: str  # left_cylinder.outlet
    interface: Interface
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Hub:
    """A bulkhead, bracket or free union that carries two line ends.

    `turn` is the declared angle of its body in radians; `through_panel` asks for a bulkhead
    fitting with its jam nut; `fitting` is a declared designation.
    """

    place: str  # bulkheads.left_floor
    name: str
    turn: float
    through_panel: bool
    sides: tuple[str, ...]
    material: str = ""
    fitting: str = ""


@dataclass(frozen=True, slots=True)
class EndRef:
    """One end of something at a joint: a placed part by number, or a port or line end by name."""

    owner: str  # "part 0", "port left_cylinder.outlet", "line left_leg from"
    index: int  # which end of it
    interface: Interface


def meeting_name(one: str, other: str) -> str:
    """What the place is called where the ends of two lines come together with nothing declared between."""
    return f"where {one} meets {other}"


@dataclass(frozen=True, slots=True)
class Mating:
    """Two ends put together."""

    one: EndRef
    other: EndRef


class MismatchKind(StrEnum):
    """Why two ends do not mate, by what a builder confuses."""

    FLARE_ANGLE = "flare angle"
    METRIC_AND_PIPE = "metric and pipe thread"
    METRIC_TUBE = "metric tube in an inch nut"
    DASH_SIZE = "dash sizes"
    PIPE_DASH = "pipe dash read as tube dash"
    THREAD_SIZE = "thread sizes"
    BOTH_FEMALE = "both female"
    BOTH_MALE = "both male"
    DIFFERENT_FORM = "different form"
    TURN = "turn of the body"
    POINTS = "where the elbow points"
    NO_PARTS = "no parts join them"


@dataclass(frozen=True, slots=True)
class Mismatch:
    """Two ends that were brought together and do not mate, in words, and what would join them."""

    kind: MismatchKind
    one: EndRef
    other: EndRef
    words: str
    needed: tuple[str, ...] = ()  # designations of the parts that would join them


@dataclass(frozen=True, slots=True)
class Refusal:
    """Parts that were looked at and not taken, and why."""

    designations: tuple[str, ...]
    reason: str


@hash_kept
@dataclass(frozen=True, slots=True)
class Joint(HashKept):
    """A joint as chosen: parts in order, who mates with whom, what was refused, what does not mate.

    `parts` run from the port (or from the first side of a hub) to the line end. `open_ends` are
    ends that nothing mates with.
    """

    name: str
    place: str
    parts: tuple[Part, ...]
    matings: tuple[Mating, ...]
    refused: tuple[Refusal, ...]
    mismatches: tuple[Mismatch, ...]
    open_ends: tuple[EndRef, ...]

    @property
    def leak_paths(self) -> int:
        return sum(mating.one.interface.seals for mating in self.matings)
