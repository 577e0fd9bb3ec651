"""A small invented stock of parts for tests of the fitting search, and the ends to be fitted."""

from __future__ import annotations

from dataclasses import dataclass
from math import radians

from firmpedal.fit.joint import LineEnd, Port
from firmpedal.model.part import DRY, Category, Clocking, End, Form, Gender, Interface, Part
from firmpedal.quantity import Mark, exactly, unknown
from firmpedal.units import Dimension

MALE, FEMALE = Gender.MALE, Gender.FEMALE


def flare(size, gender=MALE):
    return Interface(Form.FLARE_37, size, gender)


def pipe(size="1/8-27", gender=MALE):
    return Interface(Form.PIPE, size, gender)


def panel(size, gender=MALE):
    return Interface(Form.PANEL, size, gender)


def shoulder(size, gender):
    return Interface(Form.NUT_SHOULDER, size, gender)


def tube_flare(size, gender=MALE):
    return Interface(Form.TUBE_FLARE_37, size, gender)


def compression(size, gender=FEMALE):
    return Interface(Form.COMPRESSION, size, gender)


def metric(size="M10x1", gender=MALE):
    return Interface(Form.METRIC, size, gender)


def part(name, *interfaces, turn=0, grams=20, metal="aluminium", row=Category.FITTING, pressure=True, **more):
    """Make a part; bulkhead threads and seats of washers carry no fluid, everything else does.

    Unknown mass: None.
    """
    ends = tuple(End(one, one.form not in DRY, Clocking.FREE) for one in interfaces)
    flowing = sum(end.flow for end in ends)
    mass = (
        unknown("mass", Dimension.MASS, name)
        if grams is None
        else exactly("mass", Dimension.MASS, grams / 1000, Mark.ESTIMATE)
    )
    return Part(
        designation=name,
        family=more.pop("family", name.split("-")[0]),
        name=name.lower(),
        category=row,
        size="",
        material=metal,
        ends=ends,
        turn=radians(turn) if flowing == 2 else None,
        brake_pressure=pressure,
        mass=mass,
        dimensions=(),
        also_known_as=more.pop("also", ()),
        source="invented",
        mark=Mark.ESTIMATE,
    )


@dataclass(frozen=True, eq=False)
class Stock:
    """A catalogue of nothing but parts."""

    parts: tuple[Part, ...]

    def without(self, *names):
        return Stock(tuple(one for one in self.parts if one.designation not in names))

    def plus(self, *parts):
        return Stock(self.parts + parts)


def in_both_metals(name, *interfaces, grams=20, **more):
    """Make a part in aluminium, and in steel at three times the mass, under the same name with an S."""
    return (
        part(name, *interfaces, grams=grams, **more),
        part(f"{name}-S", *interfaces, grams=3 * grams, metal="steel", **more),
    )


def sized(size):
    """Make the flared parts of one tube size, in both metals."""
    male, female = flare(size), flare(size, FEMALE)
    return (
        *in_both_metals(f"STRAIGHT{size}", pipe(), male),
        *in_both_metals(f"HALF{size}", pipe(), male, turn=45, grams=25),
        *in_both_metals(f"SQUARE{size}", pipe(), male, turn=90, grams=30),
        *in_both_metals(f"UNION{size}", male, male, grams=15),
        *in_both_metals(f"BULKHEAD{size}", male, male, panel(size), grams=40),
        *in_both_metals(f"BULKELL{size}", male, male, panel(size), turn=90, grams=50),
        *in_both_metals(f"JAM{size}", panel(size, FEMALE), grams=6, row=Category.JAM_NUT),
        *in_both_metals(f"NUT{size}", female, shoulder(size, FEMALE), grams=8, row=Category.COUPLING_NUT),
        *in_both_metals(
            f"SLEEVE{size}",
            shoulder(size, MALE),
            tube_flare(size, FEMALE),
            grams=2,
            row=Category.SLEEVE,
        ),
        *in_both_metals(f"TEE{size}", male, male, male, grams=45),
        *in_both_metals(f"CAP{size}", female, grams=7, row=Category.CAP),
    )


STOCK = Stock(
    (
        *sized("-3"),
        *sized("-4"),
        *in_both_metals("REDUCER-43", flare("-4"), flare("-3"), grams=14),
        *in_both_metals("NIPPLE-1", pipe(), pipe()),
        *in_both_metals("NIPPLE-4", pipe("1/2-14"), pipe("1/2-14")),
        *in_both_metals("COUPLING-1", pipe(gender=FEMALE), pipe(gender=FEMALE)),
        *in_both_metals("BUSHING-2", pipe("1/4-18"), pipe(gender=FEMALE)),
        *in_both_metals("STREET-1", pipe(), pipe(gender=FEMALE), turn=90),
        *in_both_metals("PLUG-1", pipe(), grams=5, row=Category.CAP),
        part("OLDFORM-4", pipe(), flare("-4"), grams=1, pressure=False),
        part("SQUEEZE-4", pipe(), compression("1/4 in"), metal="brass", grams=35),
    )
)


PIPE_PORT = Port("components.cylinder.ports.outlet", "cylinder.outlet", pipe(gender=FEMALE))


def hose(size="-4", line="hose", **more):
    return LineEnd(line, "from", flare(size, FEMALE), "hose", **_in_radians(more))


def tube(size="-4", line="tube", group="aluminium", **more):
    return LineEnd(line, "to", tube_flare(size), group, **_in_radians(more))


def plastic(size="1/4 in", line="plastic", **more):
    return LineEnd(line, "to", compression(size, MALE), "plastic", **_in_radians(more))


def _in_radians(more):
    angles = {key: radians(more[key]) for key in ("leaves", "turn", "points") if more.get(key) is not None}
    return more | angles


def names(joint):
    return [one.designation for one in joint.parts]


def reasons(joint):
    """Give the reason of every refused part by its designation."""
    return {name: refusal.reason for refusal in joint.refused for name in refusal.designations}
