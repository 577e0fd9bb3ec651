"""Cutting plans beside every way there is, for few pieces."""

from __future__ import annotations

from itertools import chain, combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.decide.cutting import Piece, Stick, cutting_plan


def bought(length):
    return Stick(f"bought {length}", length, in_hand=False)


def hand(length, number=1):
    return Stick(f"in hand {number}", length, in_hand=True)


def pieces(*lengths):
    return [Piece(f"tube {n}", length) for n, length in enumerate(lengths, 1)]


def test_two_legs_and_two_short_ones_from_two_sticks():
    plan = cutting_plan(pieces(40, 40, 30, 30), [bought(72)])
    assert plan.bought == 144
    assert sorted(round(cut.left_over, 6) for cut in plan.cuts) == [2, 2]


def test_longest_first_would_open_a_third_stick():
    # into sticks of 72 the longest first: 44 + 24, then 24 + 24 + 22, and 6 is left: but 44 + 22 + 6 is 72
    plan = cutting_plan(pieces(44, 24, 24, 24, 22, 6), [bought(72)])
    assert plan.bought == 144


def test_what_lies_there_is_cut_before_anything_is_bought():
    assert cutting_plan(pieces(40, 20), [hand(45), bought(72)]).bought == 72
    assert cutting_plan(pieces(40), [hand(45), bought(72)]).bought == 0


def test_the_shorter_stick_that_will_do_is_opened():
    plan = cutting_plan(pieces(40), [hand(72, 1), hand(45, 2)])
    assert [cut.stick.name for cut in plan.cuts] == ["in hand 2"]


def test_the_cutter_takes_its_share():
    assert len(cutting_plan(pieces(36, 36), [bought(72)]).cuts) == 1
    assert len(cutting_plan(pieces(36, 36), [bought(72)], cutter_loss=0.1).cuts) == 2
    (cut,) = cutting_plan(pieces(30, 30), [bought(72)], cutter_loss=0.5).cuts
    assert cut.left_over == pytest.approx(11)


def test_a_tube_longer_than_every_stick_is_told():
    plan = cutting_plan(pieces(99.3, 40), [bought(72)])
    assert [piece.name for piece in plan.without_stick] == ["tube 1"]
    assert [piece.name for cut in plan.cuts for piece in cut.pieces] == ["tube 2"]
    assert cutting_plan(pieces(99.3), [bought(72), bought(144)]).bought == 144


def test_where_nothing_can_be_bought_as_much_is_cut_as_can_be():
    # 60 and 20 in hand: 40 and 20 from the one, 20 from the other, and 10 is left uncut
    plan = cutting_plan(pieces(40, 20, 20, 10), [hand(60, 1), hand(20, 2)])
    assert [piece.length for piece in plan.without_stick] == [10]
    assert sum(piece.length for cut in plan.cuts for piece in cut.pieces) == 80
    assert [piece.length for piece in cutting_plan(pieces(50, 50), [hand(72)]).without_stick] == [50]


def test_impossible_lengths_are_refused():
    with pytest.raises(ValueError, match="positive"):
        cutting_plan(pieces(0), [bought(72)])


def partitions(items):
    """Every way to put things into heaps."""
    if not items:
        yield []
        return
    first, rest = items[0], items[1:]
    for heaps in partitions(rest):
        yield [[first], *heaps]
        for n in range(len(heaps)):
            yield [*heaps[:n], [first, *heaps[n]], *heaps[n + 1 :]]


def least(lengths, in_hand, on_sale, loss):
    """The least length to buy, and of those plans the least opened, by trying every one."""
    best = None
    for heaps in partitions(list(lengths)):
        best = min(
            filter(None, (best, cheapest(sorted(heaps, key=sum, reverse=True), in_hand, on_sale, loss))),
            default=None,
        )
    return best


def cheapest(heaps, in_hand, on_sale, loss):
    """The cheapest way to give each heap a stick of its own: bought, or one of those in hand."""
    if not heaps:
        return (0.0, 0.0)
    need = sum(heaps[0]) + loss * (len(heaps[0]) - 1)
    ways = []
    for n, stick in enumerate(in_hand):
        if stick >= need - 1e-9:
            rest = cheapest(heaps[1:], in_hand[:n] + in_hand[n + 1 :], on_sale, loss)
            ways += [(rest[0], rest[1] + stick)] if rest else []
    for stick in on_sale:
        if stick >= need - 1e-9:
            rest = cheapest(heaps[1:], in_hand, on_sale, loss)
            ways += [(rest[0] + stick, rest[1] + stick)] if rest else []
    return min(ways, default=None)


def most_cut(lengths, sticks, on_sale, loss):
    """The greatest length of pieces that go together into the sticks, by trying every choice."""
    in_hand = sticks[: len(sticks) - len(on_sale)]
    choices = chain.from_iterable(combinations(lengths, n) for n in range(len(lengths), -1, -1))
    return max(sum(some) for some in choices if least(some, in_hand, on_sale, loss) is not None)


LENGTHS = st.integers(3, 40).map(float)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(LENGTHS, min_size=1, max_size=6),
    st.lists(st.integers(20, 60).map(float), max_size=3),
    st.lists(st.sampled_from([36.0, 60.0, 72.0]), max_size=2, unique=True),
    st.sampled_from([0.0, 0.25]),
)
def test_no_way_to_cut_buys_or_opens_less(lengths, in_hand, on_sale, loss):
    sticks = [*(hand(length, n) for n, length in enumerate(in_hand)), *(bought(length) for length in on_sale)]
    if not sticks:
        return
    wanted = least(lengths, in_hand, on_sale, loss)
    plan = cutting_plan(pieces(*lengths), sticks, loss)
    if wanted is None:
        cut = sum(lengths) - sum(piece.length for piece in plan.without_stick)
        assert cut == pytest.approx(most_cut(lengths, [stick.length for stick in sticks], on_sale, loss))
        return
    assert not plan.without_stick
    assert sorted(piece.name for cut in plan.cuts for piece in cut.pieces) == sorted(
        p.name for p in pieces(*lengths)
    )
    for cut in plan.cuts:
        assert (
            sum(piece.length for piece in cut.pieces) + loss * (len(cut.pieces) - 1)
            <= cut.stick.length + 1e-9
        )
    assert (plan.bought, plan.opened) == pytest.approx(wanted)
