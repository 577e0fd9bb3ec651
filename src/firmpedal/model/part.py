"""Parts one can buy, and the interfaces by which their ends mate."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from firmpedal.hashing import HashKept, first_of_equals, hash_kept
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension

CORNERS_OVER_FLATS = 2 / 3**0.5  # of a hexagon, the wider over the narrower


class Form(StrEnum):
    """The form of an interface; each has a male and a female half of the same size."""

    FLARE_37 = "37-degree flare"  # male: cone with straight thread; female: nut or hose swivel
    FLARE_45 = "45-degree flare"
    PIPE = "taper pipe thread"
    METRIC = "metric parallel thread"
    COMPRESSION = "compression"  # male: nut, with the sleeve that bites on the tube; female: socket
    SUPPORTED_TUBE = "tube with insert"  # male: tube held open from inside; female: bore of the sleeve
    PLAIN_TUBE = "plain tube"  # male: soft tube cut square; female: what goes into its bore
    COMPRESSION_SHOULDER = "compression nut shoulder"  # male: sleeve; female: inside of its nut
    NUT_SHOULDER = "nut shoulder"  # male: sleeve; female: inside of a coupling nut
    TUBE_FLARE_37 = "37-degree tube flare"  # male: flared tube end; female: cone of a sleeve
    TUBE_FLARE_45 = "45-degree tube flare"
    PANEL = "bulkhead thread"  # male: bulkhead fitting; female: jam nut
    BOSS = "straight-thread boss"
    BANJO = "banjo eye"  # male: cross-drilled bolt; female: eye that goes round it
    WASHER_FACE = "washer face"  # male: face that a sealing washer lies on; female: the washer
    O_RING = "O-ring seat"  # male: undercut behind a boss thread; female: the O-ring
    HOSE_BEAD = "beaded hose"
    FLARELESS = "flareless"


SEALS = frozenset(
    {
        Form.FLARE_37,
        Form.FLARE_45,
        Form.PIPE,
        Form.METRIC,
        Form.COMPRESSION,
        Form.BOSS,
        Form.BANJO,
        Form.WASHER_FACE,
        Form.HOSE_BEAD,
        Form.FLARELESS,
    }
)
"""Where fluid is held. A sealing washer holds it at two faces: the thread or eye that it lies round counts
for one, the washer face of the part for the other. An O-ring seals a boss at one place."""

DRY = frozenset({Form.PANEL, Form.WASHER_FACE, Form.O_RING})
"""Ends that no fluid flows through: each asks for the jam nut, washer or O-ring that goes on it."""


class Gender(StrEnum):
    MALE = "male"
    FEMALE = "female"

    @property
    def other(self) -> Gender:
        return Gender.FEMALE if self is Gender.MALE else Gender.MALE


@hash_kept
@dataclass(frozen=True, slots=True)
class Interface(HashKept):
    """One half of a joint: form, size and gender.

    `size` is the dash number for flares, nuts, sleeves, bosses and bulkhead threads (`-4`; metric tube
    reads `6 mm`), the thread for pipe and parallel threads (`1/8-27`, `M10x1`), the diameter of the
    thread for banjo eyes and washer faces (`M10`) and the tube's outside diameter for compression (`1/4 in`).
    """

    form: Form
    size: str
    gender: Gender

    @property
    def complement(self) -> Interface:
        """The only interface that mates with this one."""
        return _complement(self)

    @property
    def seals(self) -> bool:
        """Whether fluid is held at this joint, so that it counts as a leak path."""
        return self.form in SEALS

    def __str__(self) -> str:
        return f"{self.gender} {self.form} {self.size}"


@lru_cache(maxsize=4096)  # the search asks for it at every end of every part
def _complement(interface: Interface) -> Interface:
    return first_of_equals(Interface(interface.form, interface.size, interface.gender.other))


class Clocking(StrEnum):
    """How an end can be turned to point where it should."""

    FREE = "free"  # swivels, or is locked by a jam nut after turning
    MAKE_UP = "thread make-up"  # only within the last turns of a taper thread, never backed off


@dataclass(frozen=True, slots=True)
class End:
    """One end of a part: its interface, whether fluid passes, and how it clocks."""

    interface: Interface
    flow: bool
    clocking: Clocking


class Category(StrEnum):
    """The rows of a parts list."""

    FITTING = "fitting"
    JAM_NUT = "jam nut"
    COUPLING_NUT = "coupling nut"
    SLEEVE = "sleeve"
    TUBE = "tube"
    HOSE = "hose"
    WASHER = "washer"  # whatever is squeezed between two faces, O-rings too
    CLAMP = "clamp"
    CAP = "cap"
    OTHER = "other"


_OUTLETS = (
    "leg_centre_to_flare_end",
    "leg_centre_to_tube_end",
    "leg_centre_to_hose_end",
    "leg_centre_to_female_end",
)
_WIDTHS = (
    "hex_across_flats",
    "body_across_wrench_flats",
    "body_width",
    "eye_outside_diameter",
    "outside_diameter",
    "head_diameter",
    "rim_diameter",
    "thread_diameter",
)


@hash_kept
@dataclass(frozen=True, slots=True)
class Part(HashKept):
    """One designation, dash and material that can be bought.

    `turn` is the angle in radians by which the body turns the line, None where it has no two flow
    ends; `dimensions` holds the lengths read or estimated for it, by name.
    """

    designation: str  # AN number with dash and letter: AN822-4D
    family: str  # AN822
    name: str
    category: Category
    size: str  # the dash as printed: 4, or 4-4
    material: str  # aluminium, steel, brass
    ends: tuple[End, ...]
    turn: float | None
    brake_pressure: bool  # False: low-pressure or obsolete form, never in a brake line
    mass: Value
    dimensions: tuple[tuple[str, Value], ...]
    also_known_as: tuple[str, ...]
    source: str  # key in references.bib
    mark: Mark
    note: str = ""
    same_as: str = ""  # designation of the part that this is, where it is that part put to another use

    def dimension(self, *names: str) -> Value | None:
        """The first of these dimensions that is known for the part."""
        found = dict(self.dimensions)
        return next((found[name] for name in names if name in found), None)

    @property
    def names(self) -> tuple[str, ...]:
        """Its designation and its successors'."""
        return (self.designation, *self.also_known_as)

    @property
    def outlet_leg(self) -> Value | None:
        """From the crossing of an elbow's axes to the end where the line comes out."""
        return self.dimension(*_OUTLETS)

    @property
    def width(self) -> Value | None:
        """Across the widest section of the body, a hexagon over its flats; an elbow's arm is `outlet_leg`."""
        return self.dimension(*_WIDTHS)

    @property
    def corners(self) -> Value | None:
        """Across the corners of its hexagon; None where it has none."""
        flats = self.dimension("hex_across_flats")
        if flats is None or flats.span is None:
            return flats
        span = (flats.low * CORNERS_OVER_FLATS, flats.high * CORNERS_OVER_FLATS)
        label, step = f"width of {self.designation} across corners", Step("2 w / sqrt(3)", (("w", flats),))
        mark = max(Mark.DERIVED, flats.mark)
        return Value(label, Dimension.LENGTH, span, mark, flats.place, flats.source, step)

    @property
    def flow_ends(self) -> tuple[int, ...]:
        return tuple([n for n, end in enumerate(self.ends) if end.flow])

    @property
    def dry_ends(self) -> tuple[Interface, ...]:
        """The ends that no fluid flows through, such as a bulkhead thread or a washer face."""
        return tuple([end.interface for end in self.ends if not end.flow])

    @property
    def needs_panel(self) -> bool:
        """Whether it is made for a hole in a panel; in a boss the same nut locks it there instead."""
        held = any((end.form, end.gender) == (Form.PANEL, Gender.MALE) for end in self.dry_ends)
        flowing = {self.ends[n].interface for n in self.flow_ends}
        return held and all((end.form, end.gender) != (Form.BOSS, Gender.MALE) for end in flowing)
