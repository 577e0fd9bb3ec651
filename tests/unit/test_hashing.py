"""A hash that is kept belongs to the value alone: copies work out their own, other processes too."""

from __future__ import annotations

import copy
import pickle
import subprocess
import sys
from dataclasses import dataclass, fields, replace

from firmpedal.hashing import HashKept, Same, hash_kept
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension

COUNTED = []


class Counting(str):
    __slots__ = ()

    def __hash__(self):
        COUNTED.append(self)
        return super().__hash__()


@hash_kept
@dataclass(frozen=True, slots=True)
class Thing(HashKept):
    name: str
    number: float = 0.0


def test_it_is_worked_out_once():
    COUNTED.clear()
    thing = Thing(Counting("bore"))
    assert hash(thing) == hash(thing) == hash(Thing("bore"))
    assert COUNTED == ["bore"]


def test_it_is_neither_compared_nor_shown_nor_a_field():
    thing, other = Thing("bore"), Thing("bore")
    hash(thing)
    assert thing == other
    assert repr(thing) == repr(other)
    assert [field.name for field in fields(thing)] == ["name", "number"]


def test_a_changed_copy_has_its_own():
    thing = Thing("bore")
    hash(thing)
    changed = replace(thing, number=1.0)
    assert hash(changed) == hash(Thing("bore", 1.0)) != hash(thing)
    assert hash(copy.deepcopy(thing)) == hash(thing)


def test_another_process_where_words_have_other_hashes_finds_it_all_the_same():
    value = exactly("bore", Dimension.LENGTH, 0.0254, Mark.MEASURED)
    hash(value)
    program = (
        "import pickle, sys; from firmpedal.quantity import *; from firmpedal.units import Dimension;"
        "own = exactly('bore', Dimension.LENGTH, 0.0254, Mark.MEASURED);"
        "sent = pickle.loads(sys.stdin.buffer.read()); print(sent in {own} and own in {sent})"
    )
    for seed in ("1", "2"):
        said = subprocess.run(
            [sys.executable, "-c", program], input=pickle.dumps(value), capture_output=True, check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(filter(None, sys.path))},
        )  # fmt: skip
        assert said.stdout == b"True\n"


def test_the_same_is_the_thing_itself_and_no_other_that_equals_it():
    thing, like_it = {"bore": 0.625}, {"bore": 0.625}
    assert Same(thing) == Same(thing)
    assert hash(Same(thing)) == hash(Same(thing))
    assert Same(thing) != Same(like_it)
    assert Same(thing) != thing
