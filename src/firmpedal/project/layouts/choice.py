"""What a builder chooses before the first measurement: how it stands, its legs, who brakes and how."""

from __future__ import annotations

from dataclasses import dataclass

CHOICES: dict[str, dict[str, str]] = {
    "gear": {
        "tailwheel": "the third wheel is at the tail; the main wheels stand near the pedals",
        "nosewheel": "the third wheel is at the nose; the main wheels stand well aft of the pedals",
    },
    "leg": {
        "leaf": "a flat spring: a hose strapped along it",
        "rod": "a round rod or stiff tube: rigid tube down it, a hose for the last stretch at the wheel; "
        "where the leg bends much, make it all hose",
        "link": "a leg with a trailing link and a shock strut: rigid tube to the pivot, a hose across it",
        "bow": "one bow of laminate from wheel to wheel: a hose along each half",
    },
    "brakes": {
        "toe": "the toes tip the upper part of the rudder pedal",
        "heel": "the heels press small pedals of their own",
        "hand": "one lever and one cylinder for both wheels",
    },
    "seats": {
        "1": "one seat has brakes, in the middle of the aircraft",
        "off-centre": "one seat has brakes, left or right of the middle",
        "tandem": "two seats have brakes, one behind the other; a hand lever serves both",
        "side-by-side": "two seats have brakes, one beside the other; a hand lever serves both",
    },
    "valve": {
        "yes": "a parking valve after the last cylinder",
        "no": "none; chocks, or a hand lever that latches",
    },
    "length": {
        "in": "inches, pounds, psi",
        "mm": "millimetres, newtons, bar",
    },
}
USUAL = {"length": "in"}  # for what may be left out


class LayoutError(ValueError):
    """A layout that cannot be begun; the words say why and list the choices."""


@dataclass(frozen=True, slots=True)
class Layout:
    """A layout as chosen, each word one of `CHOICES`."""

    gear: str
    leg: str
    brakes: str
    seats: str
    valve: str
    length: str = "in"

    @property
    def hand(self) -> bool:
        return self.brakes == "hand"

    @property
    def in_series(self) -> bool:
        """Whether one set of cylinders is fed through another, from a reservoir of its own."""
        return self.seats in ("tandem", "side-by-side") and not self.hand

    @property
    def beside_the_middle(self) -> bool:
        """Whether the pedals of a seat are no mirror images of each other: the middle is not between them."""
        return self.seats in ("off-centre", "side-by-side") and not self.hand

    @property
    def has_valve(self) -> bool:
        return self.valve == "yes"


def chosen(**words: str | None) -> Layout:
    """Make a layout of the words that were given.

    Raises:
        LayoutError: Something is not chosen yet, or is not one of the choices.
    """
    wrong = {key: word for key, word in words.items() if word is not None and word not in CHOICES[key]}
    lacking = [key for key in CHOICES if words.get(key) is None and key not in USUAL]
    if not wrong and not lacking:
        return Layout(**{key: words.get(key) or USUAL[key] for key in CHOICES})
    said = [f"--{key} {word} is not a choice." for key, word in wrong.items()]
    said += [f"Still to choose: {', '.join(f'--{key}' for key in lacking)}."] if lacking else []
    listed = [line for key in CHOICES if key in wrong or key in lacking for line in _listed(key)]
    raise LayoutError("\n".join([*said, *listed]))


def _listed(key: str) -> list[str]:
    return [f"--{key}", *(f"   {word:<10} {meaning}" for word, meaning in CHOICES[key].items())]
