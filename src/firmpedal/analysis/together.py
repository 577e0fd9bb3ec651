"""What several feet make together: cylinders side by side, and cylinders that feed each other."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import seal_question
from firmpedal.formulas.levers import series_pressure
from firmpedal.quantity import Answer, Mark, Missing, Value, apply, largest, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.analysis.circuit import Feeds
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import MasterCylinder

# A rod up to half as thick as the bore takes a quarter of the piston's back: common practice, no source.
LEAST_BACK = 0.75
SHARES = {Answer.YES: (LEAST_BACK, 1.0), Answer.NO: (0.0, 0.0), Answer.UNKNOWN: (0.0, 1.0)}
MOST_FED = 12  # cylinders that feed each other in one circuit: no aircraft has more


def added_shares(aircraft: Aircraft) -> dict[str, Value]:
    """For each cylinder, how much of the pressure at its inlet adds to what its own foot makes."""
    return {each.name: _share(each) for each in aircraft.cylinders}


def adding_question(cylinder: MasterCylinder) -> Missing:
    """What to ask the maker of a cylinder that another one feeds, once the other seat is not shut out."""
    words = (
        f"ask its maker whether two feet add up in {cylinder.name}: does what another seat presses in at its "
        "inlet push on the back of its piston as well (yes), or does the harder foot alone count (no)?"
    )
    return Missing(f"{cylinder.place}.feet add up", words)


def _share(cylinder: MasterCylinder) -> Value:
    """One that shuts the other seat out adds nothing; where the file says both, the more counts."""
    answer, place = cylinder.feet_add_up, f"{cylinder.place}.feet add up"
    if answer is Answer.UNKNOWN and cylinder.seals_when_pressed is Answer.YES:
        answer, place = Answer.NO, f"{cylinder.place}.seals when pressed"
    return Value(
        f"share of the pressure at its inlet that {cylinder.name} adds to its own foot's",
        Dimension.NUMBER,
        SHARES[answer],
        Mark.MEMORY if answer is Answer.YES else Mark.DERIVED,
        place,
        "common-practice" if answer is Answer.YES else "",
        missing=(_question(cylinder),) if answer is Answer.UNKNOWN else (),
    )


def _question(cylinder: MasterCylinder) -> Missing:
    """First whether the other seat gets through at all: where it does not, nothing can add up."""
    through = cylinder.seals_when_pressed is Answer.NO
    return adding_question(cylinder) if through else seal_question(cylinder)


def answers_contradict(cylinder: MasterCylinder) -> bool:
    """Whether the other seat is said to be shut out of a cylinder and to add to what it makes as well."""
    return cylinder.seals_when_pressed is Answer.YES and cylinder.feet_add_up is Answer.YES


def pressed_together(
    own: Mapping[str, Value], feeds: Feeds, shares: Mapping[str, Value], label: str, place: str
) -> Value:
    """The greatest pressure where some cylinders press together, whatever they are pressed after.

    Args:
        own: For each cylinder that is pressed what its own foot makes [Pa]; one at least.
        feeds: Whose pressure can come to whose inlet.
        shares: How much of that each adds [-].
        label: Of the result.
        place: Of the result.
    """
    fed = any(feeds[name] & own.keys() for name in own)
    if fed and len(own) > MOST_FED:
        return unknown(label, Dimension.PRESSURE, place, f"how {len(own)} cylinders feed each other")

    @cache
    def at_outlet(name: str, others: frozenset[str]) -> Value:
        inlets = feeds[name] & others
        if not inlets:
            return own[name]
        return apply(
            series_pressure,
            f"pressure at the outlet of {name}",
            place=place,
            own=own[name].named(f"what its own foot makes of {name}"),
            inlet=of(inlets, f"pressure at the inlet of {name}"),
            added=shares[name],
        )

    def of(names: frozenset[str], words: str) -> Value:
        last = [each for each in own if each in names and not any(each in feeds[one] for one in names)]
        found = [at_outlet(each, names - {each}) for each in last or [each for each in own if each in names]]
        return found[0].named(words, place) if len(found) == 1 else largest(words, found, place)

    return of(frozenset(own), label)
