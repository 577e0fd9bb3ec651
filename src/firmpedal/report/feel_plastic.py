"""What a sheet of the pedal says of plastic lines: an unknown grade, growth beyond what the sum holds for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.model.stock import Hose, LineKind
from firmpedal.report.story import cautions

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.display import Display
    from firmpedal.report.feel_pedals import Felt

GRADE = (
    "Nobody has told the grade of the plastic of {names}, so its stiffness at 20 degC is taken from {low} to "
    "{high}: from the softest to the stiffest grade. The printing on it or its maker's sheet tells; the "
    "figure, given as the line's stiffness, narrows all that stands here."
)
GROWTH = "{words}. A tenth or more of growth says that the line is soft, not how soft to the last figure."


def plastic_words(felt: Iterable[Felt], laid: Iterable[LaidLine], display: Display) -> Iterator[str]:
    """One sentence for lines of unknown grade, and one for each growth that is too much for the sum."""
    by_grade: dict[tuple[str, str], list[str]] = {}
    for line in laid:
        if line.kind is not LineKind.PLASTIC or isinstance(line.stock, Hose) or line.stiffness.cool.known:
            continue
        modulus = line.stock.material.elastic_modulus
        if modulus.known and not modulus.exact:
            low, high = (display.number(end, modulus.dimension) for end in (modulus.low, modulus.high))
            by_grade.setdefault((low, high), []).append(line.name)
    for (low, high), names in by_grade.items():
        yield GRADE.format(names=listed(names), low=low, high=high)
    said = dict.fromkeys(
        words for each in felt for swell in each.budget.swells for words in cautions(swell.hot_wall)
    )
    for words in said:
        yield GROWTH.format(words=words[0].upper() + words[1:])
