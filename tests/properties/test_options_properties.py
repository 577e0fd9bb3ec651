"""What holds for every pair of options: nothing is lost on the way, and no order of naming them matters."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.decide.compare import compare
from firmpedal.decide.pieces import pieces_of
from firmpedal.decide.retrofit import retrofit
from firmpedal.model.part import Category
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.parts import parts_list
from texts import example, small

# Every option of two aircraft, and small ones with one thing changed.
BRINDLEWICK = [
    evaluate_text(example("brindlewick"), "text", option) for option in (None, "rigid", "all hose")
]
QUILLFEN = [
    evaluate_text(small("quillfen").replace(old, new), "text")
    for old, new in (
        ("", ""),
        ("tube 5052-O 1/4 x .035", "tube 5052-O 3/16 x .035"),
        ("tube 5052-O 1/4 x .035", "hose -4 PTFE braided"),
        ("tube 5052-O 1/4 x .035", "hose -3 PTFE braided"),
        ("tube 5052-O 1/4 x .035", "plastic nylon 1/4 x .040"),
        ("bore: 5/8", "bore: 1/2"),
        ("- [10, 0, -6]", "- [10, 0, -2]\n      - [14, 0, -6]"),
    )
    if old == "" or old in small("quillfen")
]
PAIRS = st.sampled_from([(one, other) for some in (BRINDLEWICK, QUILLFEN) for one in some for other in some])
BOUGHT = (
    *(Category.FITTING, Category.JAM_NUT, Category.COUPLING_NUT, Category.SLEEVE, Category.CAP),
    *(Category.TUBE, Category.HOSE, Category.CLAMP),
)


def test_the_small_changes_bite():
    assert len(QUILLFEN) == 7
    assert len({Counter(piece.sort for piece in pieces_of(each)).__repr__() for each in QUILLFEN}) >= 5


@settings(max_examples=40)
@given(PAIRS)
def test_every_piece_goes_one_way_and_comes_one_way(pair: tuple[Evaluation, Evaluation]):
    before, after = pair
    plan = retrofit(before, after)
    went = [*(item.before for item in plan.keep), *(item.before for item in plan.reuse)]
    went += [item.piece for item in plan.remove]
    came = [*(item.after for item in plan.keep), *(item.after for item in plan.reuse), *plan.buy]
    assert Counter(went) == Counter(pieces_of(before))
    assert Counter(came) == Counter(pieces_of(after))
    assert all(count == 1 for count in Counter(came).values())


@settings(max_examples=40)
@given(PAIRS)
def test_what_stays_or_goes_on_again_is_the_same_thing(pair: tuple[Evaluation, Evaluation]):
    plan = retrofit(*pair)
    assert all(item.before.sort == item.after.sort for item in (*plan.keep, *plan.reuse))


@settings(max_examples=20)
@given(PAIRS)
def test_from_anything_to_itself_is_no_work(pair: tuple[Evaluation, Evaluation]):
    plan = retrofit(pair[0], pair[0])
    assert plan.empty
    assert Counter(item.after for item in plan.keep) == Counter(pieces_of(pair[0]))


@settings(max_examples=20)
@given(PAIRS)
def test_steps_name_all_that_comes_off(pair: tuple[Evaluation, Evaluation]):
    """Parts in the steps of taking off add up to all that comes off; a line is a step of its own."""
    plan = retrofit(*pair)
    told: Counter[str] = Counter()
    for step in plan.steps:
        if step.phase == "take off":
            for text in step.parts:
                count, _, name = text.rpartition(" x ") if text[:1].isdigit() else ("1", "", text)
                told[name] += int(count or 1)
    off = [item.piece for item in plan.remove] + [item.before for item in plan.reuse]
    moved = Counter(piece.designation for piece in off if piece.length is None)
    clamps_of_kept = sum(  # they are moved along their line, in a step of its own
        piece.category is Category.CLAMP
        and piece.line in {pair.before.line for pair in plan.keep if pair.before.length}
        for piece in off
    )
    assert moved - told == Counter({"cushioned clamp": clamps_of_kept} if clamps_of_kept else {})
    assert not told - moved


def test_pieces_are_what_the_parts_list_says():
    """Two ways to count: by the list to order from, and by what one can hold."""
    for evaluation in (*BRINDLEWICK, *QUILLFEN):
        listed: Counter[tuple[str, str]] = Counter()
        for item in parts_list(evaluation):
            if not item.spare and item.category in BOUGHT:
                listed[item.designation, item.category] += item.quantity
        held = Counter(
            (piece.designation, piece.category) for piece in pieces_of(evaluation) if piece.category in BOUGHT
        )
        assert held == listed


@settings(max_examples=10)
@given(st.permutations(range(3)))
def test_the_order_of_options_changes_no_winner(order: list[int]):
    """A comparison turned round says the same of each option by name."""
    plain, turned = compare(tuple(BRINDLEWICK)), compare(tuple(BRINDLEWICK[n] for n in order))

    def told(found):
        rows = {
            row.measure: (
                row.result.outcome,
                frozenset(found.options[n] for n in row.result.winners),
                frozenset(row.result.measure),
                {
                    option: cell.value and cell.value.span
                    for option, cell in zip(found.options, row.cells, strict=True)
                },
            )
            for row in found.rows
        }
        apart = {
            (one.rule, one.level): dict(zip(found.options, one.counts, strict=True))
            for one in found.separators
        }
        best = None if found.advice.best is None else found.options[found.advice.best]
        out = {(found.options[n], count) for n, _, count in found.advice.out}
        return rows, apart, best, out, set(found.unknown_in_all)

    assert told(plain) == told(turned)


def test_a_change_of_mass_turned_round_is_its_opposite():
    one, other = compare(tuple(BRINDLEWICK[:2])), compare(tuple(BRINDLEWICK[1::-1]))
    there, back = one.mass_changes[1].span, other.mass_changes[1].span
    assert there[0] < there[1]
    assert back == (-there[1], -there[0])
