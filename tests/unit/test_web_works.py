"""Long work: begun once, followed, really stopped. That a process is gone is the system's own word."""

from __future__ import annotations

import os
import time

import pytest
from evaluated import example
from works_apart import HALF_WAY, dying, long, refusing, short

from firmpedal.report.buying_data import order_csv
from firmpedal.web import works as module
from firmpedal.web.worker import BROKEN, NOTHING, UNREADABLE, Wish
from firmpedal.web.works import AT_ONCE, STOPPED, WAITING, State, Works
from texts import edited
from texts import example as text_of

PATIENCE = 60.0  # s; the machines are small and shared


@pytest.fixture
def works():
    """Makes works that are ended after the test."""
    made = []

    def making(*does):
        made.append(Works(*does))
        return made[-1]

    yield making
    for each in made:
        each.stop_all()


def until(what):
    end = time.monotonic() + PATIENCE
    while not what():
        assert time.monotonic() < end, "it never comes"
        time.sleep(0.02)


def settled(work):
    until(lambda: not work.running)
    work.wait()
    return work


def alive(process):
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_a_second_wish_finds_the_first_and_stop_ends_the_process(works, tmp_path):
    all_works, wish = works(long), Wish("packet.pdf", str(tmp_path / "note"), "mine.yaml", None)
    work = all_works.begin(wish)
    assert all_works.begin(wish) is work
    assert all_works.find("mine.yaml", None, "packet.pdf") is work
    assert all_works.find("mine.yaml", "rigid", "packet.pdf") is None
    until(lambda: work.words == HALF_WAY)
    process = int((tmp_path / "note").read_text(encoding="ascii"))
    assert process != os.getpid()
    assert alive(process)
    work.stop()
    settled(work)
    until(lambda: not alive(process))
    assert (work.state, work.words, work.made) == (State.STOPPED, STOPPED, None)
    again = all_works.begin(wish)
    assert again is not work
    assert again.running


def test_work_on_an_older_text_is_stopped(works, tmp_path):
    all_works = works(long)
    old = all_works.begin(Wish("packet.pdf", str(tmp_path / "old"), "mine.yaml", None))
    new = all_works.begin(Wish("packet.pdf", str(tmp_path / "new"), "mine.yaml", None))
    assert settled(old).state is State.STOPPED
    assert new.running


def test_more_than_a_few_wait_and_can_be_stopped_there(works, tmp_path):
    all_works = works(long)
    some = [all_works.begin(Wish(f"{n}.pdf", str(tmp_path / str(n)), "a", None)) for n in range(AT_ONCE + 1)]
    until(lambda: sum(each.words == HALF_WAY for each in some) == AT_ONCE)
    (waits,) = (each for each in some if each.words != HALF_WAY)
    assert (waits.words, waits.state) == (WAITING, State.RUNNING)
    waits.stop()
    assert settled(waits).state is State.STOPPED
    assert [each.running for each in some].count(True) == AT_ONCE


def test_what_is_done_is_kept_for_a_while(works, monkeypatch):
    monkeypatch.setattr(module, "KEPT", 1)
    all_works = works(short)
    wishes = [Wish(f"{n}.pdf", "text", "mine.yaml", None) for n in range(3)]
    for wish in wishes:
        work = settled(all_works.begin(wish))
        assert (work.state, work.words, work.made.data) == (State.DONE, "a word", b"text")
        assert all_works.begin(wish) is work
    assert all_works.find("mine.yaml", None, "0.pdf") is None
    assert all_works.find("mine.yaml", None, wishes[-1].name) is work


@pytest.mark.parametrize(("does", "words"), [(dying, BROKEN), (refusing, "no ink")])
def test_what_comes_to_nothing_says_why(works, does, words):
    work = settled(works(does).begin(Wish("packet.pdf", "", "mine.yaml", None)))
    assert (work.state, work.words, work.made) == (State.REFUSED, words, None)


def test_the_real_work_makes_what_the_command_line_writes(works):
    text = text_of("brindlewick")
    all_works = works()
    work = settled(all_works.begin(Wish("parts.csv", text, "mine.yaml", "rigid")))
    assert work.made.data.decode() == order_csv(example("rigid"))
    broken = Wish("parts.csv", edited(text, ("gear: tailwheel", "gear: tailwhel")), "mine.yaml", None)
    assert settled(all_works.begin(broken)).words == UNREADABLE
    assert settled(all_works.begin(Wish("dxf.zip", text, "mine.yaml", None))).words == NOTHING
