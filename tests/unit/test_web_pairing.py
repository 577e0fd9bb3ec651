"""Letting a phone in: few tries with a code, a short life of it, and a pause that grows."""

from __future__ import annotations

import pytest
from clock_by_hand import Clock

from firmpedal.web.pairing import DIGITS, FIRST_PAUSE, LIFE, LONGEST_PAUSE, TRIES, Pairing, Said


@pytest.fixture
def clock():
    return Clock(100.0)


@pytest.fixture
def told():
    return []


@pytest.fixture
def pairing(clock, told):
    return Pairing(told.append, clock)


def wrong(code):
    return f"{(int(code) + 1) % 10**DIGITS:0{DIGITS}d}"


def test_the_code_lets_one_phone_in_and_no_second(pairing):
    code = pairing.ask()
    phone = pairing.enter(code)
    assert pairing.knows(phone)
    assert pairing.enter(code) is Said.OLD
    assert pairing.phones == 1


def test_a_code_has_six_figures_and_is_told_once(pairing, told):
    assert DIGITS >= 6
    assert {pairing.ask() for _ in range(5)} == set(told)
    assert len(told) == 1
    assert told[0].isdigit()
    assert len(told[0]) == DIGITS


def test_codes_differ_from_run_to_run():
    """Of twenty codes out of a million two are the same once in five thousand runs, all of them never."""
    assert len({Pairing().ask() for _ in range(20)}) > 10


def test_people_write_figures_in_groups(pairing):
    code = pairing.ask()
    assert pairing.knows(pairing.enter(f" {code[:3]}-{code[3:]} "))


@pytest.mark.parametrize("given", ["", "abc", "\u0661\u0662\u0663\u0664\u0665\u0666", "12345678901"])
def test_what_is_no_code_is_wrong(pairing, given):
    pairing.ask()
    assert pairing.enter(given) is Said.WRONG


def test_nobody_is_known_by_nothing(pairing):
    assert not pairing.knows("")
    phone = pairing.enter(pairing.ask())
    assert not pairing.knows("")
    assert not pairing.knows(phone[:-1])
    assert not Pairing().knows(phone)  # another run


def test_a_code_is_soon_old(pairing, clock, told):
    code = pairing.ask()
    clock.now += LIFE
    assert pairing.code == ""
    assert pairing.enter(code) is Said.OLD
    assert len(told) == 2  # there is another one at once


def test_after_too_many_tries_the_right_code_is_no_use(pairing):
    code = pairing.ask()
    said = [pairing.enter(wrong(code)) for _ in range(TRIES)]
    assert said == [Said.WRONG] * (TRIES - 1) + [Said.PAUSED]
    assert pairing.enter(code) is Said.PAUSED
    assert pairing.ask() == ""
    assert pairing.phones == 0


def test_the_pause_grows_and_a_phone_that_comes_in_ends_that(pairing, clock):
    pauses = []
    for _ in range(12):
        code = pairing.ask()
        for _ in range(TRIES):
            pairing.enter(wrong(code))
        pauses.append(pairing.pause)
        clock.now += pairing.pause
    assert pauses[:3] == [FIRST_PAUSE, 2 * FIRST_PAUSE, 4 * FIRST_PAUSE]
    assert pauses == sorted(pauses)
    assert pauses[-1] == LONGEST_PAUSE
    assert pairing.knows(pairing.enter(pairing.ask()))
    code = pairing.ask()
    for _ in range(TRIES):
        pairing.enter(wrong(code))
    assert pairing.pause == FIRST_PAUSE


def test_asking_again_gives_nobody_more_tries(pairing):
    """Knocking does not make the count of wrong ones anew."""
    code = pairing.ask()
    for _ in range(TRIES - 1):
        assert pairing.enter(wrong(code)) is Said.WRONG
    assert pairing.ask() == code
    assert pairing.enter(wrong(code)) is Said.PAUSED
