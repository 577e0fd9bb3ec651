"""Hypothesis strategies shared by all property tests."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import cos, hypot, radians, sin

from hypothesis import strategies as st

from firmpedal.units import Dimension, units_of

VULGAR = {
    Fraction(1, 2): "\N{VULGAR FRACTION ONE HALF}",
    Fraction(1, 4): "\N{VULGAR FRACTION ONE QUARTER}",
    Fraction(3, 4): "\N{VULGAR FRACTION THREE QUARTERS}",
    Fraction(1, 8): "\N{VULGAR FRACTION ONE EIGHTH}",
    Fraction(3, 8): "\N{VULGAR FRACTION THREE EIGHTHS}",
    Fraction(5, 8): "\N{VULGAR FRACTION FIVE EIGHTHS}",
    Fraction(7, 8): "\N{VULGAR FRACTION SEVEN EIGHTHS}",
}


@dataclass(frozen=True)
class MixedNumber:
    """A number on a tape measure: so many whole inches and a part of one, as its two numbers."""

    whole: int
    top: int
    bottom: int

    @property
    def part(self) -> Fraction:
        return Fraction(self.top, self.bottom)

    @property
    def size(self) -> Fraction:
        return self.whole + self.part

    def spellings(self) -> list[str]:
        """Give the ways in which people write it in inches, without a sign."""
        thousands = f"{self.whole:,}"
        ways = [
            f"{self.whole}-{self.top}/{self.bottom} in",
            f"{self.whole} {self.top}/{self.bottom} in",
            f'{self.whole} {self.top}/{self.bottom}"',
            f"{self.whole}-{self.top}/{self.bottom} inches",
            f"{thousands}-{self.top}/{self.bottom}in",
            f"  {self.whole}   {self.top}/{self.bottom}  in. ",
            f"{self.whole * self.bottom + self.top}/{self.bottom} in",
        ]
        if self.part in VULGAR:
            ways += [f"{self.whole}{VULGAR[self.part]} in", f"{self.whole} {VULGAR[self.part]}''"]
        feet, inches = divmod(self.whole, 12)
        if feet:
            ways += [
                f"{feet}' {inches}-{self.top}/{self.bottom}\"",
                f"{feet}'-{inches} {self.top}/{self.bottom}\"",
                f"{feet} ft {inches}-{self.top}/{self.bottom} in",
                f"{feet - 1} ft {inches + 12}-{self.top}/{self.bottom} in",
            ]
        return ways


@st.composite
def mixed_numbers(draw: st.DrawFn) -> MixedNumber:
    """Whole inches up to a few thousand and a proper part in any power of two up to 1/64."""
    bottom = draw(st.sampled_from([2, 4, 8, 16, 32, 64]))
    return MixedNumber(draw(st.integers(0, 3000)), draw(st.integers(1, bottom - 1)), bottom)


@st.composite
def written_decimals(draw: st.DrawFn) -> str:
    """A plain decimal as somebody would type it: 12.50, .035, 7, 1,234.5."""
    whole = draw(st.integers(0, 10**7))
    decimals = draw(st.text("0123456789", max_size=8))
    text = draw(st.sampled_from([str(whole), f"{whole:,}"]))
    if whole == 0 and decimals:
        text = draw(st.sampled_from(["0", ""]))
    return text + (f".{decimals}" if decimals else "")


@st.composite
def dimensions_and_units(draw: st.DrawFn) -> tuple[Dimension, str]:
    """Any dimension with the canonical name of one of its units."""
    dimension = draw(st.sampled_from(Dimension))
    return dimension, draw(st.sampled_from(units_of(dimension)))


def everyday_numbers() -> st.SearchStrategy[float]:
    """Floats of the sizes that occur on an aircraft, positive, from a thousandth to a million."""
    return st.floats(1e-3, 1e6)


def almost_measurements() -> st.SearchStrategy[str]:
    """Text from the letters measurements are made of, right and wrong, to try a parser's edges."""
    scraps = [
        *"0123456789.,/-+'\"~% eE°",
        *VULGAR.values(),
        "\N{PLUS-MINUS SIGN}",
        "\N{MINUS SIGN}",
        "\N{SUPERSCRIPT TWO}",
        "+/-",
        "..",
        " to ",
        "about ",
        "in",
        "ft",
        "mm",
        "psi",
        "degF",
        "oz",
        "1/K",
        "10-1/2",
    ]
    return st.lists(st.sampled_from(scraps), max_size=14).map("".join)


@st.composite
def unlike_lengths(draw: st.DrawFn, count: int) -> list[int]:
    """Whole millimetres for the straights between corners, each long enough for its bends."""
    return [draw(st.integers(150, 700)) for _ in range(count)]


@st.composite
def bent_paths(draw: st.DrawFn) -> list[tuple[float, float, float]]:
    """Corner points in millimetres, ends among them, of a tube that a 20 mm former can bend.

    Two to five bends of 10 to 120 degrees; no two straights lie in one line, nor do all in one plane but
    by chance.
    """
    lengths = draw(unlike_lengths(draw(st.integers(3, 6))))
    way = (1.0, 0.0, 0.0)
    points = [tuple(float(draw(st.integers(-900, 900))) for _ in range(3))]
    for number, length in enumerate(lengths):
        if number:
            way = _turned_off(draw, way)
        last = points[-1]
        points.append(tuple(round(last[n] + length * way[n], 3) for n in range(3)))
    return points


def _turned_off(draw: st.DrawFn, way: tuple[float, float, float]) -> tuple[float, float, float]:
    """A direction 10 to 120 degrees off another."""
    turn, round_it = (radians(draw(st.integers(*bounds))) for bounds in ((10, 120), (0, 359)))
    helper = (0.0, 0.0, 1.0) if abs(way[2]) < 0.9 else (0.0, 1.0, 0.0)
    one = _unit(_cross(way, helper))
    other = _cross(way, one)
    aside = [cos(round_it) * a + sin(round_it) * b for a, b in zip(one, other, strict=True)]
    return _unit([cos(turn) * a + sin(turn) * b for a, b in zip(way, aside, strict=True)])


def _cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def _unit(vector):
    long = hypot(*vector)
    return tuple(one / long for one in vector)
