"""What a run-up does, in words: whether tyres and tail stay down, and what is not known of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from firmpedal.analysis.stopping import RunUp, Stopping
    from firmpedal.model.display import Display

NO_HEIGHT = (
    "it takes the height of the propeller's thrust line above the ground, which the file does not give: a "
    "high pull shifts weight between the wheels"
)
FIGURES = "figures that it takes are missing in the file, or cannot all be right"


def run_up_words(stop: Stopping, display: Display) -> str:
    """What happens standing at full throttle, the wheels held; empty where the thrust is not known."""
    run_up, height = stop.run_up, stop.stance.thrust_height
    if not stop.stance.thrust.known:
        return ""
    tail = _tail_words(run_up, display)
    if not (run_up.pull.known and (run_up.holds.known or tail)):
        return _not_known(run_up, NO_HEIGHT if not height.known else FIGURES)
    of_it = f"of {display.value(stop.stance.thrust)} of thrust " if _looks_up(stop) else ""
    start = f"Standing at full throttle, wheels held: {of_it}the pull along the ground is "
    start = f"{start}{display.value(run_up.pull)}, {display.value(height)} up"
    if not run_up.holds.known:
        return f"{start}. {tail} Whether the tyres hold it is not shown: {FIGURES}."
    start = f"{start}, and the tyres hold {display.value(run_up.holds)}."
    return f"{start} {tail or 'That the pull takes weight off the main wheels is counted.'}"


def thrust_words(stop: Stopping, display: Display) -> str:
    """The thrust that the feet hold; said to be all of it, where less than that pulls along the ground."""
    thrust = display.value(stop.stance.thrust)
    return f"{thrust}\nall of the thrust" if _looks_up(stop) else thrust


def _looks_up(stop: Stopping) -> bool:
    """Whether the propeller looks up as it stands, so that less than its thrust pulls forward."""
    return stop.run_up.pull.known and stop.run_up.pull.span != stop.stance.thrust.span


def _tail_words(run_up: RunUp, display: Display) -> str:
    """What becomes of the tail, which hangs on less than what the tyres hold; empty where it is not known."""
    if run_up.lifts is None or not (run_up.lifts.known and run_up.pull.known):
        return ""
    return (
        f"The tail comes up at a pull of {display.value(run_up.lifts)}: {_tail(run_up)}. The "
        "elevator held back in the slipstream helps, and is not counted."
    )


def _not_known(run_up: RunUp, why: str) -> str:
    tail = " and whether the tail stays down" if run_up.lifts is not None else ""
    if run_up.held is Answer.NO:
        tyres = "The tyres slide at full throttle, however high the propeller sits."
        return f"{tyres} Whether the tail stays down is not shown: {why}." if tail else tyres
    return f"Whether the ground holds full throttle{tail} is not shown: {why}."


def _tail(run_up: RunUp) -> str:
    if run_up.tips is Answer.YES:
        return "full throttle lifts it"
    if run_up.tips is Answer.UNKNOWN:
        return "full throttle may lift it"
    over = run_up.lifts is not None and run_up.lifts.at_most(run_up.pull) is not Answer.NO
    return "the tyres slide before" if over else "full throttle does not lift it"
