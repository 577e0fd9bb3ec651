"""The steps of filling one wheel from its caliper up, with the valves and pedals of every seat named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.circuit_words import pedal_called
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.model.kinds import MasterCylinder, ParkingValve
from firmpedal.quantity import Answer
from firmpedal.report.bleeding_outs import on_the_way, where_to_fill
from firmpedal.report.bleeding_words import closed_at, pressure_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.bleeding import Bleeding, Rise
    from firmpedal.pipeline import Evaluation


def steps_for(evaluation: Evaluation, found: Bleeding, rise: Rise) -> tuple[str, ...]:
    """What to do at one wheel, in order."""
    return tuple(_steps(evaluation, found, rise))


def _steps(evaluation: Evaluation, found: Bleeding, rise: Rise) -> Iterator[str]:
    far = found.after(rise)
    if far is not None:
        yield f"Filled and bled together with {far.caliper}: do that first."
    else:
        yield from _filled(evaluation, found, rise)
    last = {name: each for each in found.rises for name in _cylinders(evaluation, each)}
    pedals = [
        pedal_called(evaluation.aircraft, name)
        for name in _cylinders(evaluation, rise)
        if last[name] is rise  # before that another wheel of the circuit is still empty
    ]
    if pedals:
        alone = ", one at a time" if len(pedals) > 1 else ""
        yield f"Press {listed(pedals)}{alone}: firm, and let go it frees {_wheels(evaluation, found, rise)}."


def _filled(evaluation: Evaluation, found: Bleeding, rise: Rise) -> Iterator[str]:
    """A wheel that is filled from its own bleeder up, or down to it."""
    parts = _parts(evaluation, rise)
    valves = [name for name in parts if isinstance(find(evaluation.aircraft.components, name), ParkingValve)]
    cylinders = _cylinders(evaluation, rise)
    pedals = [pedal_called(evaluation.aircraft, name) for name in cylinders]
    yield _stand(evaluation, found, rise)
    if valves:
        yield f"Open {listed(valves)}, and leave it open until the end."
    closed = closed_at(evaluation, rise)
    if pedals and not closed:
        yield (
            f"Feet off. {_first_up(listed(pedals))} all the way back against the stop, the rod fully out: "
            "only then is the port to the reservoir open."
        )
    if closed:
        yield from _from_above(evaluation, rise, cylinders)
    else:
        yield from _from_below(evaluation, found, rise, cylinders)


def _from_above(evaluation: Evaluation, rise: Rise, cylinders: list[str]) -> Iterator[str]:
    """Where a cylinder is shut at rest nothing gets up: what its maker says, else by the foot."""
    shut = [name for name in cylinders if _at_rest(evaluation, name) is Answer.NO]
    let, its = ("lets", "its maker") if len(shut) == 1 else ("let", "their makers")
    yield (
        f"{listed(shut)} {let} nothing up at rest, and nothing gets past from below: do not pump fluid in at "
        f"{rise.caliper}. Ask {its} how to fill it, and do that."
    )
    name = evaluation.aircraft.fluid.name if evaluation.aircraft.fluid is not None else "clean fluid"
    yield (
        f"Where nothing else is said, fill from above (common practice, no source). Fill {rise.top} with "
        f"{name}, and keep it full all the while. A clear hose goes from the highest bleeder of "
        f"{rise.caliper} into a jar, its end under fluid."
    )
    pedals = [pedal_called(evaluation.aircraft, each) for each in reversed(cylinders)]
    in_turn = ", one after the other" if len(pedals) > 1 else ""
    show, volume = evaluation.display.value, rise.volume
    holds = f" The lines hold {show(volume)}: at least twice that has to come." if volume.known else ""
    yield (
        f"Two people, with {listed(pedals)}{in_turn}: bleeder open, pedal slowly down; bleeder shut, pedal "
        f"slowly back up. Again until no bubble comes.{holds}"
    )
    if rise.passes:
        yield f"Then the same at the bleeder of {listed(rise.passes)}."
    yield f"Shut the bleeder and take the hose off. Bring {rise.top} to its full mark and close it."


def _at_rest(evaluation: Evaluation, name: str) -> Answer:
    part = find(evaluation.aircraft.cylinders, name)
    return part.opens_at_rest if part is not None else Answer.YES


def _from_below(evaluation: Evaluation, found: Bleeding, rise: Rise, cylinders: list[str]) -> Iterator[str]:
    """Fluid pumped in at the wheel until it comes at the top without a bubble."""
    yield from _doubtful_at_rest(evaluation, cylinders)
    yield (
        f"Push the pistons of {listed((rise.caliper, *rise.passes))} fully home. Fill the pump's hose with "
        f"fluid before you put it on {where_to_fill(evaluation, rise)}"
    )
    yield (
        f"Cap off {rise.top}, and take fluid out of it down to the low mark. Keep it from running over all "
        "the while, with a syringe."
    )
    yield _pump(evaluation, rise)
    yield from _past(evaluation, found, rise, cylinders)
    for name in rise.passes:
        yield on_the_way(evaluation, name)
    yield (
        f"Shut the bleeder while the pump still presses, then take the hose off. Bring {rise.top} to its "
        "full mark and close it."
    )


def _cylinders(evaluation: Evaluation, rise: Rise) -> list[str]:
    names = _parts(evaluation, rise)
    return [each for each in names if find(evaluation.aircraft.cylinders, each)]


def _wheels(evaluation: Evaluation, found: Bleeding, rise: Rise) -> str:
    """The wheel that a pedal frees, or the wheels."""
    pressed = set(_cylinders(evaluation, rise))
    calipers = {each.caliper for each in found.rises if pressed & set(_cylinders(evaluation, each))}
    braked = evaluation.results.stopping.stance.braked.most
    wheels = [group for group in braked if calipers & set(group)]
    return "the wheel" if len(wheels) == 1 else "all its wheels"


def _parts(evaluation: Evaluation, rise: Rise) -> list[str]:
    """The cylinders and valves that the way of a wheel passes, from the wheel up."""
    ways = evaluation.results.heights.ways
    way = next(each for each in ways if (each.caliper, each.top) == (rise.caliper, rise.top))
    heads = dict.fromkeys(spot.near.rpartition(".")[0] for spot in way.spots)
    wanted = (MasterCylinder, ParkingValve)
    return [name for name in heads if isinstance(find(evaluation.aircraft.components, name), wanted)]


def _stand(evaluation: Evaluation, found: Bleeding, rise: Rise) -> str:
    """The attitude, with its reason where there is a choice."""
    show = evaluation.display.value
    if len(evaluation.results.heights.attitudes) < 2:
        return f"Stand it as it was measured: {rise.attitude}."
    why = [
        f"air at {pocket.near} then only has to go down {show(pocket.depth)}" for pocket in found.met(rise)
    ]
    over: dict[str, list[str]] = {}
    for each in rise.gravity:
        if each.blocked is not None and each.attitude != rise.attitude:
            over.setdefault(each.blocked.line, []).append(each.attitude)
    why += [
        f"in the attitude {' or '.join(names)}, {line} stands above the fill cap and fluid runs out there"
        for line, names in over.items()
    ]
    reasons = f": {'; '.join(why)}" if why else ""
    return f"Stand it in the attitude {rise.attitude}{reasons}."


def _first_up(words: str) -> str:
    return words[:1].upper() + words[1:]


def _doubtful_at_rest(evaluation: Evaluation, cylinders: list[str]) -> Iterator[str]:
    for name in cylinders:
        if _at_rest(evaluation, name) is Answer.UNKNOWN:
            yield f"Whether {name} is open at rest is not known: if nothing comes at the top, stop and ask."


def _pump(evaluation: Evaluation, rise: Rise) -> str:
    show, fluid = evaluation.display.value, evaluation.aircraft.fluid
    name = fluid.name if fluid is not None else "clean fluid"
    order = ", then ".join(rise.lines)
    holds = f" The lines hold {show(rise.volume)}: pump that, then as much again" if rise.volume.known else ""
    rate = f" at {show(rise.flow)} or more, one filling within {show(rise.time)}" if rise.flow.known else ""
    pause = ", and never let it stop or run back." if holds else " Never let it stop or run back."
    return f"Pump {name} up {order}, {pressure_words(evaluation, rise)}.{holds}{rate if holds else ''}{pause}"


def _past(evaluation: Evaluation, found: Bleeding, rise: Rise, cylinders: list[str]) -> Iterator[str]:
    """What to do for each high point on the way."""
    for near in dict.fromkeys(pocket.near for pocket in found.met(rise)):
        name = near.rpartition(".")[0]
        if name in cylinders:
            pedals = listed([pedal_called(evaluation.aircraft, each) for each in cylinders])
            yield (
                f"Air stays at {near}, and inside {name}. While fluid runs, press {pedals} slowly and let "
                "go all the way, ten times each, and tap the cylinder. If bubbles go on coming, unhook it "
                "and hold it low, so that the line after it rises; a level line does not cure this."
            )
        else:
            yield (
                f"Air stays at {near}: it is past there only once fluid from the pump has gone on to "
                f"{rise.top}. Tap the line there while fluid runs."
            )
