"""Hypothesis strategies shared by all property tests."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

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
