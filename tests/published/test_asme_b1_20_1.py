"""[asme-b1-20-1] ASME B1.20.1, Pipe threads, general purpose (inch), table of basic dimensions.

Values from a web copy, E0 from a mirror of one. L1 is an input here as it is printed; the turns in
a length are derived by us from the printed lengths.
"""

import pytest
from exact_units import INCH

from firmpedal.formulas.threads import (
    effective_thread_length,
    engagement_turns,
    pitch_diameter_at_gauge_plane,
    pitch_diameter_at_small_end,
)

SOURCE = "asme-b1-20-1"
PLACE = "table of basic dimensions of taper pipe threads"
#           D      n   E0         E1         L1       L2        L1/p    L2/p
THREADS = {
    "1/8": (0.405, 27, "0.36351", "0.3736", 0.1615, "0.2639", "4.36", "7.13"),
    "1/4": (0.540, 18, "0.47739", "0.49163", 0.2278, "0.4018", "4.1", "7.23"),
    "3/8": (0.675, 18, "0.61201", "0.62701", 0.2400, "0.4078", "4.32", "7.34"),
}
every_thread = pytest.mark.parametrize("size", THREADS)


@every_thread
def test_pitch_diameter_at_the_small_end(case, size):
    diameter, threads_per_inch, printed, *_ = THREADS[size]
    ours = pitch_diameter_at_small_end(diameter * INCH, INCH / threads_per_inch) / INCH
    case(SOURCE, f"E0 of {size} in pipe", f"{printed} in", ours, place=PLACE)


@every_thread
def test_pitch_diameter_at_the_hand_tight_plane(case, size):
    diameter, threads_per_inch, _, printed, engagement, *_ = THREADS[size]
    small_end = pitch_diameter_at_small_end(diameter * INCH, INCH / threads_per_inch)
    ours = pitch_diameter_at_gauge_plane(small_end, engagement * INCH) / INCH
    case(SOURCE, f"E1 of {size} in pipe", f"{printed} in", ours, place=PLACE)


@every_thread
def test_length_of_effective_thread(case, size):
    diameter, threads_per_inch, *_, printed, _, _ = THREADS[size]
    ours = effective_thread_length(diameter * INCH, INCH / threads_per_inch) / INCH
    case(SOURCE, f"L2 of {size} in pipe", f"{printed} in", ours, place=PLACE)


@every_thread
def test_turns_by_hand_derived(case, size):
    _, threads_per_inch, _, _, engagement, _, expected, _ = THREADS[size]
    ours = engagement_turns(engagement * INCH, INCH / threads_per_inch)
    case(SOURCE, f"turns by hand of {size} in pipe", f"{expected} turns", ours, how="derived")


@every_thread
def test_turns_of_effective_thread_derived(case, size):
    _, threads_per_inch, *_, length, _, expected = THREADS[size]
    ours = engagement_turns(float(length) * INCH, INCH / threads_per_inch)
    case(SOURCE, f"turns of effective thread of {size} in pipe", f"{expected} turns", ours, how="derived")
