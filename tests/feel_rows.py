"""Terms of the pedal's curve from plain figures, for cases of one pedal with constant ratio."""

import numpy as np

from firmpedal.analysis.feel.terms import Terms

FIELDS = (
    "area", "full_stroke", "free_stroke", "gap", "fluid", "modulus", "air", "exponent",
    "spring", "spring_rate", "friction", "ratio",
)  # fmt: skip
NOTHING = dict.fromkeys(FIELDS, 0.0) | {"full_stroke": 1.0, "exponent": 1.0, "modulus": 1e9, "ratio": 1.0}


def terms(*cases, link=None):
    """Each case a dict of what is not nothing; `walls` are (knot, slope) pairs."""
    width = max(1, *(len(case.get("walls", ())) for case in cases))
    walls = [[*case.get("walls", ()), *[(0.0, 0.0)] * width][:width] for case in cases]
    columns = {name: np.array([{**NOTHING, **case}[name] for case in cases], float) for name in FIELDS}
    both = np.array(walls, float)
    return Terms(**columns, knots=both[:, :, 0], slopes=both[:, :, 1], link=link)
