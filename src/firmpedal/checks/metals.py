"""The rule about metals that eat each other where they touch."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.component import Metal
from firmpedal.model.part import Category
from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.component import BaseComponent
    from firmpedal.model.part import Part

RULE = "dissimilar-metals"
COPPERS = ("brass", "copper", "bronze")
LIGHT = ("aluminium", "magnesium")
NOBLE = ("stainless steel", "titanium")


def dissimilar_metals(view: View) -> Iterator[Outcome]:
    """No fitting touches a metal that eats it away, or that it eats, when it gets wet.

    Brass and copper eat aluminium and magnesium; magnesium suffers under anything else; aluminium suffers
    on stainless steel and titanium. Steel fittings of these standards are plated, so that they go with
    aluminium.
    """
    asked: list[Missing] = []
    for component in view.aircraft.components:
        joints = [joint for joint in view.assembly.joints if joint.name.startswith(f"{component.name}.")]
        touching = [part for joint in joints for part in joint.parts[:1]]
        if component.body is not None:
            yield from _pairs(component.name, component.place, component.body.value, touching)
        elif any(_copper(part.material) for part in touching):
            asked.append(_asked(component))
    for bulkhead in view.aircraft.bulkheads:
        joint = next((one for one in view.assembly.joints if one.place == bulkhead.place), None)
        if joint is not None and bulkhead.material is not None:
            touching = [part for part in joint.parts if part.needs_panel or part.category is Category.JAM_NUT]
            metal = bulkhead.material.value
            yield from _pairs(f"the panel at {bulkhead.name}", bulkhead.place, metal, touching)
    if asked:
        message = "whether brass fittings sit in aluminium or magnesium"
        yield NotShown(RULE, asked[0].place.rpartition(".")[0], message, tuple(asked))


def _asked(component: BaseComponent) -> Missing:
    what = f"what the body of {component.name} is made of: its fitting is brass"
    return Missing(f"{component.place}.body", what)


def _pairs(name: str, place: str, metal: str, parts: list[Part]) -> Iterator[Outcome]:
    """One finding per level for a body and the parts in it."""
    for level in (Level.CAUTION, Level.NOTE):
        found = list(dict.fromkeys(part for part in parts if _level(part.material, metal) is level))
        if found:
            names = ", ".join(dict.fromkeys(part.designation for part in found))
            metals = " and ".join(dict.fromkeys(part.material for part in found))
            yield _finding(level, place, f"{names} in {name}: {metals} on {metal}")


def _finding(level: Level, place: str, what: str) -> Finding:
    return Finding(
        RULE,
        level,
        place,
        f"{what}: where they get wet the one eats the other",
        (
            "fittings of the same metal, or of plated steel",
            "otherwise keep water out with sealant, paint the joint over, and look at it every year",
        ),
        sources=practice("ac-65-9a"),
    )


def _level(one: str, other: str) -> Level | None:
    """How bad two metals are together: copper metals on light ones are the worst."""
    pair = (one, other)
    light = any(metal in LIGHT for metal in pair)
    if light and any(_copper(metal) for metal in pair):
        return Level.CAUTION
    magnesium = Metal.MAGNESIUM.value in pair and one != other
    noble = "aluminium" in pair and any(metal in NOBLE for metal in pair)
    metals = all(_is_metal(metal) for metal in pair)
    return Level.NOTE if metals and (magnesium or noble) else None


def _copper(metal: str) -> bool:
    return metal in COPPERS


def _is_metal(name: str) -> bool:
    return name in (*COPPERS, *LIGHT, *NOBLE, "steel", "cast iron")
