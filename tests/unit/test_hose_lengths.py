"""What hose to order: the longest path with slack, then a ready-made length or the next half inch."""

from __future__ import annotations

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit


def ordered(path: str, more: str = ""):
    """A hose between two brackets so far apart."""
    text = f"""\
firmpedal: 1
aircraft: {{name: Hose, gear: nosewheel, brakes: toe, landing weight: 900 lb}}
units: {{length: in}}
bulkheads:
  one: {{sides: {{a: {{seat: [0, 0, 0]}}, b: {{seat: [0, 0, 1]}}}}}}
  other: {{sides: {{a: {{seat: [{path}, 0, 0]}}, b: {{seat: [9, 9, 9]}}}}}}
lines:
  hose: {{from: one.a, to: other.a, made of: hose -4 PTFE braided{more}}}
"""
    (line,) = evaluate_text(text, "text").laid
    return line.hose


def inches(value) -> float:
    return to_unit(value.middle, "in")


@pytest.mark.parametrize(
    ("path", "order", "ready_made"),
    [
        ("5.6", 6, True),  # 5.6 and 6 percent are 5.94, and 6 is 7 percent over the path
        ("5.5", 6, True),  # 5.83, and 6 is 9 percent, but the next half inch is 6 all the same
        ("5.1", 5.5, False),  # 5.41, and 6 would be 18 percent
        ("11.2", 12, True),
        ("11.0", 12, True),
        ("10.8", 11.5, False),
        ("8.24", 9, False),
        ("9.0", 10, False),
        ("22.5", 24, True),
        ("23.0", 24.5, False),
        ("48.5", 51.5, False),
    ],
)
def test_ready_made_if_its_slack_is_allowed_else_to_the_half_inch(path, order, ready_made):
    hose = ordered(path)
    assert inches(hose.order_length) == pytest.approx(order)
    assert hose.ready_made is ready_made
    assert inches(hose.least_length) == pytest.approx(1.06 * float(path))
    assert hose.order_length.low >= hose.least_length.high - 1e-9


@pytest.mark.parametrize(("path", "order"), [("8.5", 8.5), ("8.5002", 9), ("8.4998", 8.5)])
def test_a_half_inch_stays_itself(path, order):
    assert inches(ordered(path, ", slack: 0").order_length) == pytest.approx(order)


def test_the_builder_may_say_how_much_slack():
    assert inches(ordered("8.0", ", slack: 0.10").least_length) == pytest.approx(8.8)
    assert ordered("5.4", ", most slack: 0.12").ready_made


def test_a_range_is_ordered_for_its_longest():
    hose = ordered("8.0 to 8.6")
    assert inches(hose.order_length) == pytest.approx(9.5)
    assert hose.order_length.exact


def test_an_unknown_path_is_an_unknown_order():
    hose = ordered("unknown")
    assert hose.order_length.span is None
    assert not hose.ready_made
