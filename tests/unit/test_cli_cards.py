"""`cards` by the command itself: which pages, for which lines."""

from __future__ import annotations

import pytest
from evaluated import EXAMPLE
from printed_pages import reader

from commands import firmpedal

UNUSABLE = 2


def run(out, *words):
    return firmpedal("cards", EXAMPLE, "--option", "rigid", "-o", out, *words)


def titles(out):
    first = [page.extract_text().partition("\n")[0] for page in reader(out.read_bytes()).pages]
    return list(dict.fromkeys(first))


def starting(words, found):
    return [title for title in found if title.startswith(words)]


def test_every_line_and_what_tube_needs_besides(tmp_path):
    done = run(tmp_path / "c.pdf")
    assert (done.returncode, done.stderr) == (0, "")
    found = titles(tmp_path / "c.pdf")
    for words in (
        "Hose left_pedal",
        "Tube left_leg",
        "Hose left_tail",
        "Tube right_leg",
        "Torque",
        "Flaring",
    ):
        assert starting(words, found)
    assert not starting("Parts", found)
    assert not starting("Brindlewick", found)


@pytest.mark.parametrize(
    ("words", "there", "not_there"),
    [
        (("--line", "left_leg"), ["Tube left_leg", "Torque", "Flaring"], ["Hose", "Tube right"]),
        (("--line", "left_leg", "--only-lines"), ["Tube left_leg"], ["Torque", "Flaring", "Hose"]),
        (("--line", "left_tail"), ["Hose left_tail"], ["Torque", "Flaring", "Tube"]),
        (
            ("--line", "right_leg", "--line", "left_tail"),
            ["Tube right_leg", "Hose left_tail", "Torque"],
            ["Tube left"],
        ),
    ],
)
def test_chosen_lines(tmp_path, words, there, not_there):
    done = run(tmp_path / "c.pdf", *words)
    assert done.returncode == 0
    found = titles(tmp_path / "c.pdf")
    assert all(starting(each, found) for each in there)
    assert not [each for each in not_there if starting(each, found)]


def test_a_line_that_is_not_there_gets_a_near_miss(tmp_path):
    done = run(tmp_path / "c.pdf", "--line", "left_log")
    assert done.returncode == UNUSABLE
    assert "did you mean `left_leg`?" in done.stderr
    assert not (tmp_path / "c.pdf").exists()
