"""All that is held is looked through in a pause, once after a spell of answers, and by nobody else."""

from __future__ import annotations

import gc

import pytest

from firmpedal.web.tidying import LONGEST, PAUSE, Tidier, hold_back


class Clock:
    now = 100.0

    def __call__(self):
        return self.now


@pytest.fixture
def tidier():
    clock, done = Clock(), []
    made = Tidier(clock, lambda: done.append(clock.now))
    return made, clock, done


def test_nothing_is_done_where_nothing_was_answered(tidier):
    made, clock, done = tidier
    clock.now += 10 * LONGEST
    made.look()
    assert done == []


def test_it_waits_for_a_pause_and_looks_once(tidier):
    made, clock, done = tidier
    for _ in range(5):
        made.answered()
        clock.now += PAUSE - 1
        made.look()
    assert done == []
    clock.now += 1
    made.look()
    made.look()
    assert done == [clock.now]
    made.answered()
    clock.now += PAUSE
    made.look()
    assert len(done) == 2


def test_it_does_not_wait_for_ever(tidier):
    made, clock, done = tidier
    while not done:
        made.answered()
        clock.now += 1
        made.look()
    assert done == [100.0 + LONGEST]


def test_old_values_are_left_alone_but_young_ones_are_not():
    before = gc.get_threshold()
    try:
        hold_back()
        assert gc.get_threshold()[:2] == before[:2]
        old = gc.get_stats()[2]["collections"]
        kept = [[[number]] for number in range(200_000)]
        assert gc.get_stats()[2]["collections"] == old
        assert len(kept) == 200_000
    finally:
        gc.set_threshold(*before)
