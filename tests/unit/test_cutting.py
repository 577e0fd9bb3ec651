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


def test_what_no_stick_is_left_for_keeps_nobody_from_buying_for_the_rest():
    # only the 45 in hand holds a tube of 40, and there are two of them; the 20 is cut from a stick of 36
    plan = cutting_plan(pieces(40, 40, 20), [hand(45), bought(36)])
    assert [piece.length for piece in plan.without_stick] == [40]
    assert (plan.bought, plan.opened) == (36, 81)


def test_without_pieces_nothing_is_bought_or_cut():
    for sticks in ([], [bought(72)], [hand(45), bought(72)]):
        plan = cutting_plan([], sticks)
        assert (plan.cuts, plan.without_stick, plan.bought) == ((), (), 0)


def test_one_tube_that_no_stick_holds_leaves_the_plan_of_the_others_as_it_is():
    others, sticks = pieces(44, 24, 24, 24, 22, 6), [bought(72), bought(144)]
    alone, beside = cutting_plan(others, sticks), cutting_plan([*others, Piece("mast", 200)], sticks)
    assert [piece.name for piece in beside.without_stick] == ["mast"]
    assert (alone.bought, alone.opened) == (beside.bought, beside.opened) == (144, 144)


def test_a_stick_in_hand_is_cut_up_once_only():
    plan = cutting_plan(pieces(40, 40), [hand(45), bought(72)])
    assert sorted(cut.stick.name for cut in plan.cuts) == ["bought 72", "in hand 1"]


def test_sticks_come_in_the_order_in_which_the_tubes_stand_in_the_file():
    # by hand: 40 and 30 fill one stick of 70, and 20 and 35 go together into the other
    plan = cutting_plan(pieces(40, 20, 35, 30), [bought(70)])
    assert [[piece.length for piece in cut.pieces] for cut in plan.cuts] == [[40, 30], [35, 20]]


@pytest.mark.parametrize(
    ("lengths", "sticks", "loss"),
    [((0,), (72,), 0.0), ((-1,), (72,), 0.0), ((40,), (72, 0), 0.0), ((40,), (72,), -0.1)],
)
def test_impossible_lengths_are_refused(lengths, sticks, loss):
    with pytest.raises(ValueError, match="positive"):
        cutting_plan(pieces(*lengths), [bought(length) for length in sticks], loss)


def test_lengths_below_a_metre_are_lengths():
    assert cutting_plan(pieces(0.4), [bought(0.5)]).bought == 0.5


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


def most_cut(lengths, in_hand, on_sale, loss):
    """The greatest length that sticks hold, and the least bought and opened for it, by every choice."""
    choices = chain.from_iterable(combinations(lengths, n) for n in range(len(lengths) + 1))
    ways = [(sum(some), least(some, in_hand, on_sale, loss)) for some in choices]
    most = max(long for long, way in ways if way is not None)
    return most, min(way for long, way in ways if way is not None and long == most)


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
        most, wanted = most_cut(lengths, in_hand, on_sale, loss)
        assert sum(lengths) - sum(piece.length for piece in plan.without_stick) == pytest.approx(most)
        assert (plan.bought, plan.opened) == pytest.approx(wanted)
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
