"""Hose lengths."""

from __future__ import annotations

from firmpedal.formulas._validity import require_not_negative, require_positive


def hose_length_with_slack(path: float, slack: float) -> float:
    """Hose length with the slack it needs under pressure.

    L = l (1 + s)

    Args:
        path: l, longest path between the two seats in any state of movement [m].
        slack: s, slack as a share of the path [-].

    Returns:
        Length of the hose from seat to seat L [m].

    Valid: l > 0, s >= 0; published practice for s is 0.05 to 0.08.
    Source: [ac-43-13-1b], paragraph 9-30, page 9-20.
    """
    require_positive(path, "the path of the hose")
    require_not_negative(slack, "the slack")
    return path * (1 + slack)
