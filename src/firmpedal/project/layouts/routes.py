"""Which line goes where: the usual good practice for each kind of leg, from cylinder to wheel."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.project.layouts import parts
from firmpedal.project.names import other_side

if TYPE_CHECKING:
    from firmpedal.project.layouts.choice import Layout

HOSE = "hose -4 PTFE braided"
TUBE = "tube 5052-O 1/4 in x .035 in"


@dataclass(frozen=True, slots=True)
class Routes:
    """The fittings and lines of a layout as text, and the names on the mirror list."""

    fittings: tuple[str, ...]
    lines: tuple[str, ...]
    mirrored: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Line:
    name: str
    start: str
    finish: str
    stock: str
    mirrored: bool = True


@dataclass(frozen=True, slots=True)
class _Fitting:
    name: str
    words: str
    first: str
    second: str
    form: str = "straight"
    moves: str = ""
    mirrored: bool = True


_FLOOR = _Fitting("left_floor", "where the line goes out to the leg", "above", "below", "90 degrees")
_FRONT = _Fitting("left_front", "a bracket near the pedals, where the hose ends", "fore", "rear")
_AXLE = _Fitting("left_axle", "a bracket at the axle", "upper", "lower", moves="left_wheel")
_PIVOT = _Fitting("left_pivot", "a bracket on the fixed leg, above the pivot of the link", "upper", "lower")


def routes(layout: Layout) -> Routes:
    """Take the lines of a layout from the reservoir or cylinder down to the wheel."""
    cabin = _cabin(layout)
    fittings, lines = [_FLOOR], [*(_lines_apart(cabin) if layout.beside_the_middle else cabin), *_leg(layout)]
    if not layout.has_valve and not layout.hand and layout.gear == "nosewheel":
        fittings[:0] = _fittings_apart(_FRONT) if layout.beside_the_middle else [_FRONT]
    fittings += {"rod": [_AXLE], "link": [_PIVOT]}.get(layout.leg, [])
    texts = [parts.TEE] if layout.hand else []
    texts += [_fitting(one) for one in fittings]
    written = [_line(one) for one in lines]
    mirrored = [*(one.name for one in fittings if one.mirrored), *(one.name for one in lines if one.mirrored)]
    return Routes(tuple(texts), tuple(written), tuple(mirrored))


def _lines_apart(lines: list[_Line]) -> list[_Line]:
    """The lines of the left side, then those of the right one, each written by itself."""
    left = [replace(one, mirrored=False) for one in lines]
    return [*left, *map(_other_line, left)]


def _other_line(one: _Line) -> _Line:
    name, start, finish = map(other_side, (one.name, one.start, one.finish))
    return replace(one, name=name, start=start, finish=finish)


def _fittings_apart(one: _Fitting) -> list[_Fitting]:
    left = replace(one, mirrored=False)
    return [left, replace(left, name=other_side(one.name))]


def _cabin(layout: Layout) -> list[_Line]:
    """From the cylinder to the fitting above the leg."""
    if layout.hand:
        return _from_lever(layout)
    found, out = _feeds(layout)
    if layout.has_valve:
        found.append(_Line("left_to_valve", out, "valve.left_in", HOSE))
        return [*found, _Line("left_cabin", "valve.left_out", "left_floor.above", TUBE)]
    if layout.gear == "nosewheel":
        found.append(_Line("left_pedal_hose", out, "left_front.fore", HOSE))
        return [*found, _Line("left_cabin", "left_front.rear", "left_floor.above", TUBE)]
    return [*found, _Line("left_pedal_hose", out, "left_floor.above", HOSE)]


def _feeds(layout: Layout) -> tuple[list[_Line], str]:
    """From the reservoir through the second seat's cylinder to the first seat's; and where that lets out."""
    if not layout.in_series:
        return [], "left_cylinder.outlet"
    feed = _Line("left_feed", "reservoir.left_out", "second_left_cylinder.inlet", HOSE)
    cross = _Line("left_cross", "second_left_cylinder.outlet", "first_left_cylinder.inlet", HOSE)
    return [feed, cross], "first_left_cylinder.outlet"


def _from_lever(layout: Layout) -> list[_Line]:
    target = "valve.in" if layout.has_valve else "tee.from_lever"
    found = [_Line("lever_hose", "hand_cylinder.outlet", target, HOSE, mirrored=False)]
    if layout.has_valve:
        found.append(_Line("valve_to_tee", "valve.out", "tee.from_lever", TUBE, mirrored=False))
    return [*found, _Line("left_cabin", "tee.left_run", "left_floor.above", TUBE)]


def _leg(layout: Layout) -> list[_Line]:
    """From the fitting above the leg to the caliper."""
    if layout.leg not in ("rod", "link"):
        return [_Line("left_leg", "left_floor.below", "left_caliper.inlet", HOSE)]
    middle, tail = {"rod": ("left_axle", "left_tail"), "link": ("left_pivot", "left_across")}[layout.leg]
    upper = _Line("left_leg", "left_floor.below", f"{middle}.upper", TUBE)
    return [upper, _Line(tail, f"{middle}.lower", "left_caliper.inlet", HOSE)]


def _line(line: _Line) -> str:
    words = {"name": line.name, "start": line.start, "finish": line.finish, "stock": line.stock}
    return _filled(parts.LINE, words)


def _fitting(one: _Fitting) -> str:
    moves = f"    moves with: {one.moves}\n" if one.moves else ""
    words = {"name": one.name, "words": one.words, "form": one.form, "first": one.first, "second": one.second}
    return _filled(parts.FITTING, {**words, "moves": moves})


def _filled(text: str, words: dict[str, str]) -> str:
    for key, word in words.items():
        text = text.replace(f"<{key}>", word)
    return text
