"""[pipe-thread-article] Article of a fitting maker on taper pipe threads, web copy.

The article gives turns by hand to the half turn. Our turns come from the lengths of the standard in
force, so they differ by less than a quarter turn, half of the article's step.
"""

import pytest
from exact_units import INCH

from firmpedal.formulas.threads import engagement_turns

SOURCE = "pipe-thread-article"
WHY = "the article rounds to half a turn"


#           L1      n   printed      ours less printed
TURNS = {
    "1/8": (0.1615, 27, "4.5 turns", {"off_by": "-0.14", "why": WHY}),
    "1/4": (0.2278, 18, "4 turns", {}),
    "3/8": (0.2400, 18, "4.5 turns", {"off_by": "-0.18", "why": WHY}),
}


@pytest.mark.parametrize("size", TURNS)
def test_turns_by_hand(case, size):
    engagement, threads_per_inch, printed, difference = TURNS[size]
    ours = engagement_turns(engagement * INCH, INCH / threads_per_inch)
    case(SOURCE, f"turns by hand of {size} in pipe", printed, ours, **difference)
