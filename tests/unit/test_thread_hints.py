"""A thread in other words than the file's is refused with our spelling of what may be meant."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.catalog import catalogue
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.project import read_text
from firmpedal.project.thread import ThreadError, read_thread
from firmpedal.project.thread_hints import HOW, thread_hint
from firmpedal.project.thread_spelling import TAPER, spelled_thread
from texts import edited, small

FEMALE, MALE = "1/8 NPT female", "1/8 NPT male"
FLARES = ["-4 flare 37 male", "-4 flare 37 female"]
OF_SIZE_4 = [*FLARES, "-4 boss male", "-4 boss female"]
SIZES = {
    Form.PIPE: tuple(TAPER.values()),
    Form.METRIC: ("M10x1", "M10x1.25", "M12x1", "M14x1.5"),
    Form.BOSS: ("-3", "-4", "-16"),
    Form.FLARE_37: ("-3", "-4", "-16"),
    Form.FLARE_45: ("-4",),
    Form.COMPRESSION: ("1/4 in", "6 mm"),
}

# What is written, and every spelling that the advice names: what people write is common practice, no source.
MEANT = {
    # the gender alone is missing: both answers
    "1/8 NPT": [FEMALE, MALE],
    "1/8-27": [FEMALE, MALE],
    "1/8 pipe": [FEMALE, MALE],
    "1/8-27 NPT": [FEMALE, MALE],
    "1/8 x 27 NPT": [FEMALE, MALE],
    "M10x1": ["M10 x 1 female", "M10 x 1 male"],
    "m10 x 1,25": ["M10 x 1.25 female", "M10 x 1.25 male"],
    "compression 1/4": ["compression 1/4 in female", "compression 1/4 in male"],
    "6mm compression": ["compression 6 mm female", "compression 6 mm male"],
    "-4 boss": ["-4 boss female", "-4 boss male"],
    "-4 flare 37": ["-4 flare 37 female", "-4 flare 37 male"],
    # one thread alone
    "NPT 1/8 F": [FEMALE],
    "1/8 FNPT": [FEMALE],
    "MNPT 1/8": [MALE],
    '1/8" NPT male': [MALE],
    "1/8-27 internal": [FEMALE],
    "M10*1 f": ["M10 x 1 female"],
    "1/4 compression female": ["compression 1/4 in female"],
    "AN4 flare male": ["-4 flare 37 male"],
    "-4 JIC female": ["-4 flare 37 female"],
    "AN4 nut": ["-4 flare 37 female"],
    "ORB 6 male": ["-6 boss male"],
    # a size: each that there is of it
    **dict.fromkeys(("AN4", "AN-4", "4 AN", "-4", "#4", "-4 AN"), OF_SIZE_4),
    "AN4 male": ["-4 flare 37 male", "-4 boss male"],
    "-4 flare": [*FLARES, "-4 flare 45 male", "-4 flare 45 female"],
    "-4 flare male": ["-4 flare 37 male", "-4 flare 45 male"],
    "3/8-24 UNF": ["-3 boss male", "-3 boss female", "-3 flare 37 male", "-3 flare 37 female"],
    "7/16-20 female": ["-4 boss female", "-4 flare 37 female"],
    # lacks a figure, or is none that fittings are known for
    "M10 female": ["M10 x 1 female"],
    "G 1/8": [FEMALE],
    "1/8-28 male": [MALE],
    "unknown": [FEMALE],
    "AN816-4D": [FEMALE],
}


def refusal(text):
    with pytest.raises(ThreadError) as refused:
        read_thread(text)
    return str(refused.value), refused.value.suggestion


def spellings(advice):
    return [
        each for each in re.findall(r"`([^`]*)`", advice) if each.partition(" ")[0] not in ("assumed", "hose")
    ]


@pytest.mark.parametrize("text", MEANT)
def test_the_advice_names_what_may_be_meant_as_the_file_spells_it(text):
    wrong, advice = refusal(text)
    assert text in wrong
    assert spellings(advice) == MEANT[text]
    assert all(spelled_thread(read_thread(each)) == each for each in spellings(advice))


@pytest.mark.parametrize("text", MEANT)
def test_did_you_mean_is_asked_where_one_alone_can_be_meant(text):
    _, advice = refusal(text)
    if advice.startswith("did you mean"):
        assert len(MEANT[text]) == 1
    if len(MEANT[text]) > 1:
        assert advice.startswith("write ")


@pytest.mark.parametrize("text", ["1/8 NPT", "M10x1", "-4 boss", "compression 1/4", "-4 flare 37"])
def test_a_missing_gender_is_called_that(text):
    wrong, advice = refusal(text)
    assert wrong == f"`{text}` does not say male or female"
    assert "inside" in advice
    assert "outside" in advice


def test_a_size_alone_speaks_of_nut_and_hose_too():
    wrong, advice = refusal("AN4")
    assert wrong == "`AN4` is a size, and does not say what is there"
    assert "a nut or the swivel end of a hose" in advice
    assert advice.endswith("a hose itself is what a line is made of")
    assert "hose -4 PTFE braided" in refusal("AN4 hose")[1]


def test_both_genders_are_one_too_many():
    assert refusal("1/8 NPT male female")[0].endswith("is both male and female")


@pytest.mark.parametrize(
    "text", ["a thread", "1/8", "flare", "1/8-27 NPS", "3/16 flare male", "99/98-27", ""]
)
def test_what_could_be_anything_is_not_guessed_at(text):
    assert refusal(text)[1] == HOW


@pytest.mark.parametrize("size", [each.dash for each in catalogue().sizes])
def test_the_straight_thread_of_each_dash_size_leads_to_that_size(size):
    _, advice = refusal(f"{catalogue().size(size).thread} UNJF male")
    assert spellings(advice) == [f"{size} boss male", f"{size} flare 37 male"]


@pytest.mark.parametrize(
    "thread",
    [Interface(form, size, gender) for form, sizes in SIZES.items() for size in sizes for gender in Gender],
    ids=str,
)
def test_what_is_spelled_is_read_as_the_same(thread):
    assert read_thread(spelled_thread(thread)) == thread


def test_the_file_says_it_at_the_port():
    text = edited(small("quillfen"), ("outlet: {thread: 1/8 NPT female", "outlet: {thread: 1/8 NPT"))
    (problem,) = read_text(text).problems
    assert "outlet thread: `1/8 NPT` does not say male or female" in problem.message
    assert spellings(problem.suggestion) == [FEMALE, MALE]


PIECES = [
    *("1/8", "3/8", "-4", "-27", "-24", "4", "M10", "x", "1", "1.25", "37", "45", "G", "#", '"', ",", " "),
    *("AN", "NPT", "m", "f", "male", "female", "flare", "boss", "nut", "compression", "mm", "in"),
    *("\N{DEGREE SIGN}", "\N{ARABIC-INDIC DIGIT FOUR}"),
]


@settings(max_examples=400)
@given(st.lists(st.sampled_from(PIECES), max_size=7).map("".join) | st.text(max_size=20))
def test_whatever_is_written_each_spelling_that_is_named_can_be_read(text):
    named = spellings(thread_hint(text).advice)
    assert [spelled_thread(read_thread(each)) for each in named] == named
