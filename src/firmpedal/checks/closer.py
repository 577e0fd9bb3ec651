"""What would have to be known more closely for a verdict, and what a builder can do about it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.quantity import Missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.quantity import Value

# Where a figure that is nobody's to write comes from: the catalogue's, or none at all.
NOT_IN_THE_FILE = ("", "catalogue")
REACHES = "{label} more closely: its range reaches the limit"
PIECE = (
    "{label}{of}: what its standard allows reaches the limit, and a caliper to 0.001 in tells more. Choose "
    "another size, metal or fitting, or show the measured piece to whoever inspects it"
)
SHEET = (
    "{label}{of}: its range reaches the limit. Ask its maker for a sheet with a closer figure, and choose "
    "by it"
)
SWELLS = (
    "what {name} takes as it swells, by its maker's sheet or by a burette with one end plugged: all that its "
    "standard allows would be too much"
)
UNDER = "the pressure at which {name} takes that as it swells"


def vague(value: Value, owner: str = "") -> Iterator[tuple[Value, str]]:
    """The figures whose range makes a value's range, as far back as it is told, each with its thing.

    Args:
        value: A value.
        owner: The place of the thing that it is of, such as `lines.left_leg`, where its own does not say.
    """
    if value.span is None or value.exact:
        return
    around = owner if value.place in NOT_IN_THE_FILE else ".".join(value.place.split(".")[:2])
    inputs = value.step.inputs if value.step else ()
    inner = [one for _, part in inputs for one in vague(part, around)]
    yield from inner or [(value, around)]


def closer(value: Value) -> tuple[Missing, ...]:
    """What to find out before a range does not reach its limit any more: things that somebody can do."""
    asked = (one for figure, owner in vague(value) for one in _asked(figure, owner))
    return tuple(dict.fromkeys(asked))


def _asked(figure: Value, owner: str) -> tuple[Missing, ...]:
    if figure.missing:  # it says itself what would narrow it
        return figure.missing
    if figure.place not in NOT_IN_THE_FILE:
        return (Missing(figure.place, REACHES.format(label=figure.label), figure.dimension),)
    section, _, name = owner.partition(".")
    if section == "lines" and figure.dimension is Dimension.VOLUME_PER_LENGTH:
        return (
            Missing(f"{owner}.swells.volume", SWELLS.format(name=name), Dimension.VOLUME),
            Missing(f"{owner}.swells.under", UNDER.format(name=name), Dimension.PRESSURE),
        )
    words = PIECE if figure.dimension in (Dimension.LENGTH, Dimension.NUMBER) else SHEET
    place = f"{owner}.made of" if section == "lines" else owner
    return (Missing(place, words.format(label=figure.label, of=f" of {name}" if name else "")),)
