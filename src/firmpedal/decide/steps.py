"""The work of a retrofit in the order in which it goes, made of its differences alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.circuits import drained, filled
from firmpedal.decide.pieces import lines_at
from firmpedal.decide.putting_on import closing, fitting_lines, fixed, on_new_components
from firmpedal.decide.step import Action, Phase, Step, counted, new_lines, waits
from firmpedal.decide.taking_off import looking, taking_off
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.kinds import ParkingValve
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.ports import Gauge
    from firmpedal.decide.work import Work
    from firmpedal.fit.joint import Joint


def steps_of(work: Work, gauges: tuple[Gauge, ...]) -> tuple[Step, ...]:
    """Give the steps; none where nothing changes."""
    body = (
        *taking_off(work),
        *looking(work, gauges),
        *closing(work),
        *fixed(work),
        *fitting_lines(work),
    )
    if not body and not work.buy:
        return ()
    return (*_ready(work), *_safe(work), *_drain(work), *body, *_prove(work))


def _ready(work: Work) -> Iterator[Step]:
    if work.buy:
        yield Step(Phase.READY, Action.BUY, "parts", (str(len(work.buy)),), beforehand=True)
    made = ((LineKind.TUBE, Action.MAKE), (LineKind.PLASTIC, Action.CUT), (LineKind.HOSE, Action.HAVE_HOSE))
    for kind, action in made:
        for name in new_lines(work, kind):
            on_it = [piece for piece in work.on if piece.line == name and piece.category in NUTS_AND_SLEEVES]
            again = [pair.after.line for pair in work.reuse if pair.after.line == name and pair.after.length]
            if again:
                continue
            later = waits(work, name)
            begun, about = (Action.MAKE_IN_PART, (later.words,)) if later else (action, ())
            yield Step(Phase.READY, begun, name, counted(on_it), beforehand=True, about=about)
    yield from on_new_components(work, Phase.READY)


def _safe(work: Work) -> Iterator[Step]:
    yield Step(Phase.SAFE, Action.CHOCK, "wheels")
    for component in work.before.aircraft.components:
        if isinstance(component, ParkingValve):
            yield Step(Phase.SAFE, Action.OPEN_VALVE, component.name)


def _drain(work: Work) -> Iterator[Step]:
    """Each circuit that is opened, with the fluid its lines hold."""
    for cylinder, lines, amount in drained(work):
        yield Step(Phase.DRAIN, Action.DRAIN, cylinder, about=lines, amount=amount)
    old, new = work.before.aircraft.fluid, work.after.aircraft.fluid
    old = work.after.aircraft.fluid_before or old
    if old is not None and new is not None and old.name != new.name:
        yield Step(Phase.DRAIN, Action.FLUSH, new.name, about=(old.name,))


def _prove(work: Work) -> Iterator[Step]:
    """What every opened circuit needs before it is brakes again."""
    disturbed = _disturbed(work)
    leaks = sum(joint.leak_paths for joint in disturbed)
    if disturbed:
        names = tuple(joint.name for joint in disturbed)
        yield Step(Phase.PROVE, Action.TIGHTEN, "joints", (str(len(disturbed)),), about=names)
    yield from _filling(work, {name for joint in disturbed for name in lines_at(joint)})
    if disturbed:
        yield Step(Phase.PROVE, Action.LEAK_CHECK, "leak paths", (str(leaks),), about=names)
        yield from _closing_up(work)
    yield Step(Phase.PROVE, Action.RECORD, "papers")


def _filling(work: Work, touched: set[str]) -> Iterator[Step]:
    """Every circuit with a touched line, from its wheel up as air rises, through open valves."""
    circuits = [circuit for circuit in filled(work.after) if touched & set(circuit.lines)]
    for component in work.after.aircraft.components if circuits else ():
        if isinstance(component, ParkingValve):
            yield Step(Phase.PROVE, Action.OPEN_TO_FILL, component.name)
    for it in circuits:
        yield Step(Phase.PROVE, Action.FILL, it.top, it.wheels, about=it.lines, amount=it.amount)


def _closing_up(work: Work) -> Iterator[Step]:
    """What hides a line when it is closed: the places that new lines run through."""
    new = new_lines(work)
    hidden: dict[str, list[str]] = {}
    for crossing in work.after.crossings:
        if crossing.line in new and crossing.inside and crossing.zone.hidden is Answer.YES:
            hidden.setdefault(crossing.zone.name, []).append(crossing.line)
    for zone, lines in hidden.items():
        yield Step(Phase.PROVE, Action.CLOSE_UP, zone, about=tuple(dict.fromkeys(lines)))


def _disturbed(work: Work) -> list[Joint]:
    """Joints at which something went off or on, or a new line comes."""
    places = {piece.place for piece in (*work.off, *work.on)}
    return [
        joint
        for joint in work.after.assembly.joints
        if joint.place in places or any(name not in work.same.new_lines for name in lines_at(joint))
    ]
