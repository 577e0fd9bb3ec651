"""What is confused when two interfaces do not mate, told from the interfaces alone."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from firmpedal.fit.joint import MismatchKind
from firmpedal.fit.mating import dressed, mates
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.units import from_unit, show

_SYSTEM = {
    Form.TUBE_FLARE_37: Form.FLARE_37,
    Form.NUT_SHOULDER: Form.FLARE_37,
    Form.TUBE_FLARE_45: Form.FLARE_45,
    Form.PLAIN_TUBE: Form.COMPRESSION,
    Form.SUPPORTED_TUBE: Form.COMPRESSION,
    Form.COMPRESSION_SHOULDER: Form.COMPRESSION,
}
_TUBES = {Form.TUBE_FLARE_37: "37-degree", Form.TUBE_FLARE_45: "45-degree"}
_SIZED_BY_THREAD = frozenset({Form.PIPE, Form.METRIC, Form.BOSS})

NEAREST_FIRST = (
    MismatchKind.FLARE_ANGLE,
    MismatchKind.BOTH_FEMALE,
    MismatchKind.BOTH_MALE,
    MismatchKind.METRIC_TUBE,
    MismatchKind.THREAD_SIZE,
    MismatchKind.DASH_SIZE,
    MismatchKind.METRIC_AND_PIPE,
    MismatchKind.DIFFERENT_FORM,
    MismatchKind.NO_PARTS,
)
"""Kinds by how near the two ends are to mating, so how likely somebody tries."""

_CONFUSED = {
    frozenset({Form.FLARE_37, Form.FLARE_45}): MismatchKind.FLARE_ANGLE,
    frozenset({Form.METRIC, Form.PIPE}): MismatchKind.METRIC_AND_PIPE,
}

_WORDS = {
    MismatchKind.FLARE_ANGLE: "never a 45-degree flare on a 37-degree cone, nor the other way round; "
    "they touch on a thin line, leak and crack",
    MismatchKind.METRIC_AND_PIPE: "a parallel and a taper thread may start by hand, then they wedge, "
    "split the port or leak",
    MismatchKind.DASH_SIZE: "they do not mate without a reducer",
    MismatchKind.THREAD_SIZE: "threads of different size do not mate",
    MismatchKind.BOTH_FEMALE: "both are female, a union or nipple is missing between them",
    MismatchKind.BOTH_MALE: "both are male, something female is missing between them",
}

_DASH = re.compile(r"-(\d+)")
_METRIC_THREAD = re.compile(r"M(\d+(?:\.\d+)?)")
_PLAIN = re.compile(r"(\d+/\d+|\d+(?:\.\d+)?)(?: (mm))?")


def system(interface: Interface) -> Form:
    """Give the form by which an interface's parts are sold: a sleeve belongs to the 37-degree flare."""
    return _SYSTEM.get(interface.form, interface.form)


@lru_cache(maxsize=256)
def nominal(interface: Interface) -> float:
    """Give the nominal diameter behind a size in metres; 0 where the size names none."""
    if found := _DASH.fullmatch(interface.size):
        return from_unit(int(found[1]) / 16, "in")
    if found := _METRIC_THREAD.match(interface.size):
        return from_unit(float(found[1]), "mm")
    found = _PLAIN.match(interface.size)
    return from_unit(float(Fraction(found[1])), found[2] or "in") if found else 0.0


def kind_of(one: Interface, other: Interface) -> MismatchKind:
    """Say what is confused when these two are brought together; tube ends have their nut and sleeve on.

    Two interfaces that mate, but for a nut and sleeve, lack only parts.
    """
    one, other = dressed(one), dressed(other)
    systems = frozenset({system(one), system(other)})
    if len(systems) > 1:
        return _CONFUSED.get(systems, MismatchKind.DIFFERENT_FORM)
    if mates(one, other):
        return MismatchKind.NO_PARTS
    if one.size != other.size:
        return _size_kind(one, other)
    return _gender_kind(one, other)


def _gender_kind(one: Interface, other: Interface) -> MismatchKind:
    if one.form != other.form:
        return MismatchKind.DIFFERENT_FORM
    return MismatchKind.BOTH_FEMALE if one.gender is Gender.FEMALE else MismatchKind.BOTH_MALE


def _size_kind(one: Interface, other: Interface) -> MismatchKind:
    if system(one) in _SIZED_BY_THREAD:
        return MismatchKind.THREAD_SIZE
    metric = {interface.size.endswith("mm") for interface in (one, other)}
    return MismatchKind.METRIC_TUBE if len(metric) > 1 else MismatchKind.DASH_SIZE


def words_for(kind: MismatchKind, one: Interface, other: Interface) -> str:
    """Say in a builder's words what is wrong when two interfaces are brought together."""
    if kind is MismatchKind.METRIC_TUBE:
        return _metric_tube_words(one, other)
    what = _WORDS.get(kind, "they do not mate as they are")
    return f"{described(one)} against {described(other)}: {what}"


def _metric_tube_words(one: Interface, other: Interface) -> str:
    metric, inch = (one, other) if one.size.endswith("mm") else (other, one)
    tube = show(nominal(inch), "in", fraction=16)
    exact = show(nominal(inch), "mm", decimals=2)
    return (
        f"{metric.size} tube and a {inch.size} nut and sleeve do not go together: they are made for "
        f"{tube} tube, {exact}, and do not hold {metric.size}"
    )


def described(interface: Interface) -> str:
    """Name an interface as a builder would: `-4 37-degree flare, female`."""
    if interface.form in _TUBES and interface.gender is Gender.MALE:
        return f"{interface.size} tube with a {_TUBES[interface.form]} flare"
    if interface.form is Form.PLAIN_TUBE and interface.gender is Gender.MALE:
        return f"plain {interface.size} tube"
    return f"{interface.size} {interface.form}, {interface.gender}"


@lru_cache(maxsize=8192)  # a port is held against every end in the catalogue, and many of those are alike
def nearness(one: Interface, other: Interface) -> tuple[int, float, str, str]:
    """Say how near two interfaces that do not mate are to mating, in a form that sorts nearest first."""
    rank = NEAREST_FIRST.index(kind_of(one, other))
    return rank, abs(nominal(one) - nominal(other)), str(one), str(other)
