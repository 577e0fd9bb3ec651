"""Rules about what lines stay clear of."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.checks.closer import REACHES
from firmpedal.checks.view import Limit, Outcome, View, cited, judge
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.stock import Hose
from firmpedal.model.surroundings import Obstacle
from firmpedal.quantity import Answer, Mark, Value, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.states import Setting
    from firmpedal.lay.stay_clear import Gap
    from firmpedal.model.surroundings import KeepClear

# Usual distances in inches, from memory; MIL-H-8891A sends its reader elsewhere for them.
USUAL = {
    Obstacle.DISC: 1 / 2,
    Obstacle.TYRE: 1 / 2,
    Obstacle.MOVING_PART: 1 / 2,
    Obstacle.CONTROL: 1 / 2,
    Obstacle.EXHAUST: 2,
    Obstacle.LEG: 1 / 4,
    Obstacle.EDGE: 1 / 4,
    Obstacle.STRUCTURE: 1 / 4,
}
# What cuts or burns a line through when it touches; the others wear at it.
MOVES_OR_BURNS = (
    Obstacle.DISC,
    Obstacle.TYRE,
    Obstacle.MOVING_PART,
    Obstacle.CONTROL,
    Obstacle.EXHAUST,
)


def too_near_to_stay_clear(view: View) -> Iterator[Outcome]:
    """A line stays clear of what moves, burns or cuts, in every state of movement.

    Lines worn through by contact are what fails most. A line that is strapped to a thing names it with
    `along`, and is not measured against it. A hose is measured along its declared path.
    """
    rule = "too-near-to-stay-clear"
    for each in view.gaps:
        line = find(view.aircraft.lines, each.line)
        if line is None or line.along == each.thing.name:
            continue
        gap = _surely_too_near(each)
        limit = Limit(gap.distance, _wanted(gap.thing), "at least")
        if limit.kept is Answer.YES:
            continue  # most are, and the words for them take their time
        place = line.place
        tries = ["lead it further off, and clamp it there", *_tries(gap.thing.kind)]
        if isinstance(line.made_of, Hose):
            tries.append("clamp the hose so that it cannot swing there: between its ends it bows")
        if gap.distance.known and gap.distance.high <= 0:
            level = Level.WARNING if gap.thing.kind in MOVES_OR_BURNS else Level.CAUTION
            message = f"{line.name} touches {gap.thing.name}{_where(view, gap)}"
            yield Finding(
                rule,
                level,
                place,
                message,
                tuple(tries),
                gap.distance,
                limit.allowed,
                limit.relation,
                cited(limit.allowed),
            )
            continue
        shown = view.show(gap.distance) if gap.distance.known else ""
        message = (
            f"{line.name} comes within {shown} of {gap.thing.name}{_where(view, gap)}; "
            f"keep {view.show(limit.allowed)}"
        )
        found = judge(limit, rule=rule, level=Level.CAUTION, place=place, message=message, tries=tuple(tries))
        yield from (_with_figures(one, view, gap, limit) for one in found)


def _with_figures(outcome: Outcome, view: View, gap: Gap, limit: Limit) -> Outcome:
    """Where the distance itself is what is too wide, say it with its limit and what can be done about it."""
    if not isinstance(outcome, NotShown) or not gap.distance.known:
        return outcome
    bare = REACHES.format(label=limit.measured.label)
    words = (
        f"how near {gap.line} comes to {gap.thing.name}: {view.show(gap.distance)} by what is known, and "
        f"{view.show(limit.allowed)} is to be kept. Measure its corners and ends there more closely, or "
        "lead it further off"
    )
    asked = (replace(one, what=words, dimension=None) if one.what == bare else one for one in outcome.missing)
    return replace(outcome, missing=tuple(asked))


def _surely_too_near(gap: Gap) -> Gap:
    """What touches as it was measured needs no further measuring: no movement takes that back."""
    if (
        gap.as_measured is not None
        and Limit(gap.as_measured, _wanted(gap.thing), "at least").kept is Answer.NO
    ):
        return replace(gap, distance=gap.as_measured)
    return gap


def _wanted(thing: KeepClear) -> Value:
    if thing.distance.known:
        return thing.distance.named(f"distance to keep from {thing.name}")
    kind = thing.kind
    label = f"usual distance from {'an' if kind.value[0] in 'aeiou' else 'a'} {kind.value}"
    return exactly(
        label, Dimension.LENGTH, from_unit(USUAL[kind], "in"), Mark.MEMORY, source="common-practice"
    )


def _where(view: View, gap: Gap) -> str:
    """Say at which point of the line, and in which state."""
    if gap.point is None:
        return ""
    return f" near {view.display.spot(gap.point)}{_when(gap.setting)}"


def _when(setting: Setting) -> str:
    words = [f"{name} {value:g}" if isinstance(value, float) else f"{value}" for name, value in setting]
    return f" with {', '.join(words)}" if words else ""


def _tries(kind: Obstacle) -> tuple[str, ...]:
    if kind is Obstacle.EXHAUST:
        return ("put a shield between",)
    return ("strap it along, and say at along what it runs along",) if kind is Obstacle.LEG else ()
