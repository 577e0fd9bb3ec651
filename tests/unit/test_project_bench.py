"""Trial bends that no metal makes, pieces of tube and packs that hold nothing: each an error at its line.

That tube springs back and never on is physics; where a springback is called a slip is our own choice.
"""

from __future__ import annotations

import pytest
from planting import SMALL, only, sound

BENCH = "\nbench:\n  bend radius: 3/4\n  bender: {springback: [{asked: 30, got: 28}, {asked: %s, got: %s}]}\n"
TUBE = "\nbench:\n  tube:\n    sticks: {made of: tube 5052-O 1/4 x .035, pieces: [72, %s]}\n"
PACK = "\nbuying:\n  packs:\n    clamps: {of: cushioned clamp 1/4 in, pieces: %s}\n"

BENDS = [
    ("90", "96", "96", "came to 96 deg, more than the 90 deg", "swapped"),
    ("86 to 88", "90", "90", "came to 90 deg, more than the 86 to 88 deg", "swapped"),
    ("-90", "86", "-90", "the angle asked of the bender has to be more than nothing", "without a sign"),
    ("90", "-86", "-86", "the angle that it came to has to be more than nothing", "without a sign"),
    ("0", "1 to 2", "0,", "the angle asked of the bender", "without a sign"),
    ("90", "60", "60", "sprang back from 90 deg to 60 deg", "a bound of our own"),
    ("20", "14", "14", "sprang back from 20 deg to 14 deg", "more than a quarter"),
]


@pytest.mark.parametrize(("asked", "got", "stands", "message", "advice"), BENDS)
def test_a_trial_bend_that_cannot_be(asked, got, stands, message, advice):
    found = only(SMALL + BENCH % (asked, got))
    assert found.stands.startswith(stands)
    assert message in found.message
    assert advice in found.suggestion


@pytest.mark.parametrize(
    ("asked", "got"),
    [("90", "86"), ("90", "90"), ("90", "68"), ("10", "5"), ("90", "85 to 92"), ("90", "unknown")],
)
def test_a_trial_bend_that_can_be(asked, got):
    assert len(sound(SMALL + BENCH % (asked, got)).aircraft.bench.bender.springback) == 2


@pytest.mark.parametrize(
    ("text", "stands", "message"),
    [
        (TUBE % "-72", "-72", "less than nothing"),
        (TUBE % "0", "0", "a piece of sticks has no length"),
        (PACK % "0", "0", "cannot be nothing"),
        (PACK % "2.5", "2.5", "counted: 1, 2, ..."),
    ],
)
def test_nothing_is_no_piece_and_no_pack(text, stands, message):
    found = only(SMALL + text)
    assert found.stands.startswith(stands)
    assert message in found.message


def test_pieces_and_packs_that_are_there():
    sound(SMALL + TUBE % "21-1/2" + PACK % "5")
    sound(SMALL + TUBE % "unknown" + PACK % "unknown")
