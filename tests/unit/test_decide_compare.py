"""Options side by side: who wins on what, where nobody can, what tells them apart, what to do."""

from __future__ import annotations

import pytest
from options_text import TEXT, thistlemoor

from firmpedal.decide.compare import Comparison, compare
from firmpedal.decide.contest import Outcome, contest
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, Value, exactly, unknown
from firmpedal.report.advice import answer
from firmpedal.report.compare import compare_sheet
from firmpedal.report.sheet import Bullets, Paragraph, Table, Tone
from firmpedal.units import Dimension


def side_by_side(*options: str | None) -> Comparison:
    return compare(tuple(thistlemoor(option) for option in options))


def row(found: Comparison, measure: str):
    return next(row for row in found.rows if row.measure == measure)


def figures(found: Comparison, measure: str) -> list[float]:
    return [cell.value.middle for cell in row(found, measure).cells]


def plain(number: float) -> Value:
    return exactly("n", Dimension.NUMBER, number, Mark.DERIVED)


def span(low: float, high: float, place: str = "there") -> Value:
    return Value("n", Dimension.NUMBER, (low, high), Mark.ESTIMATE, place)


class TestContest:
    @pytest.mark.parametrize(
        ("values", "least", "outcome", "winners"),
        [
            ([plain(1), plain(2)], True, Outcome.WON, (0,)),
            ([plain(1), plain(2)], False, Outcome.WON, (1,)),
            ([plain(2), plain(2), plain(3)], True, Outcome.WON, (0, 1)),
            ([plain(2), plain(2)], True, Outcome.ALIKE, ()),
            ([span(1, 2), span(3, 4)], True, Outcome.WON, (0,)),
            ([span(1, 3), span(2, 4)], True, Outcome.OVERLAP, ()),
            ([span(1, 2), span(1, 2)], True, Outcome.ALIKE, ()),  # one thing, seen twice
            ([span(1, 2), span(1, 2, "here")], True, Outcome.OVERLAP, ()),  # two things of one range
            ([span(1, 2), plain(1.5)], True, Outcome.OVERLAP, ()),
            ([plain(1), None], True, Outcome.NO_CONTEST, ()),
            ([plain(1), unknown("n", Dimension.NUMBER, "x")], True, Outcome.UNKNOWN, ()),
        ],
    )
    def test_only_who_surely_wins(self, values, least, outcome, winners):
        result = contest(values, range(len(values)), least=least)
        assert (result.outcome, result.winners) == (outcome, winners)

    def test_only_those_in_the_running_count(self):
        result = contest([plain(0), plain(1), plain(2)], (1, 2), least=True)
        assert result.winners == (1,)

    def test_what_is_unknown_is_asked_for(self):
        result = contest([plain(1), unknown("the weight", Dimension.MASS, "x")], (0, 1), least=True)
        assert [missing.what for missing in result.measure] == ["the weight"]

    def test_what_is_vague_is_asked_for(self):
        result = contest([span(1, 3), plain(2)], (0, 1), least=True)
        assert [(missing.place, missing.what) for missing in result.measure] == [("there", "n more closely")]


class TestRows:
    def test_counts_are_what_stands_in_the_file(self):
        """By hand: three lines or two; a port, a port, two at the floor, two flares on tube, and so on."""
        found = side_by_side(None, "one hose")
        assert figures(found, "lines") == [3, 2]
        assert figures(found, "leak paths") == [
            10,
            8,
        ]  # 4 pipe threads, 6 flares; with one line less 4 flares
        assert figures(found, "joints") == [5, 4]
        assert figures(found, "parts") == [10, 4]

    def test_the_fewest_win(self):
        found = side_by_side(None, "one hose")
        for measure in ("leak paths", "joints", "parts"):
            assert row(found, measure).result.winners == (1,)

    def test_a_hose_is_measured_by_its_rating_and_a_tube_by_its_yield(self):
        """The two are not alike: a rating has its margin in it, a yield has none."""
        found = side_by_side(None, "one hose")
        yields = row(found, "yield over panic foot")
        assert yields.cells[1].value is None
        assert yields.result.outcome is Outcome.NO_CONTEST
        assert row(found, "rating over panic foot").result.outcome is Outcome.ALIKE

    def test_the_smaller_tube_is_the_stronger_one(self):
        """Yield p = s (D^2 - d^2) / (sqrt 3 D^2): 3/16 x .035 against 1/4 x .035, same alloy."""
        small, large = (1 - (1 - 2 * 0.035 / size) ** 2 for size in (3 / 16, 1 / 4))
        found = side_by_side(None, "dash 3")
        one, other = figures(found, "yield over panic foot")
        assert other / one == pytest.approx(small / large)
        assert row(found, "yield over panic foot").result.winners == (1,)

    def test_mass_is_told_as_a_change_too(self):
        found = side_by_side(None, "no change", "own fluid")
        assert found.mass_changes[0] is None
        assert found.mass_changes[1].span == (0.0, 0.0)  # what both have cancels, however vague it is
        assert found.mass_changes[2].high < 0  # a hose and two fittings less, a plug more

    def test_plastic_at_the_wheel_loses(self):
        found = side_by_side(None, "nylon")
        assert figures(found, "heat") == [0, 1]
        assert [option for option, *_ in found.advice.out] == [1]
        assert found.advice.standing == (0,)


class TestApart:
    def test_rules_that_speak_of_one_and_not_of_the_other(self):
        found = side_by_side(None, "nylon")
        told = {one.rule: one.counts for one in found.separators if one.level}
        assert told["plastic-in-hot-place"] == (0, 1)
        assert told["pressure-above-rating"] == (0, 1)

    def test_the_gravest_first_and_questions_last(self):
        order = ["WARNING", "CAUTION", "NOTE", None]
        levels = [order.index(one.level) for one in side_by_side(None, "nylon", "steel leg").separators]
        assert levels == sorted(levels)

    def test_what_is_said_of_all_of_them_does_not_tell_them_apart(self):
        assert side_by_side(None, "no change", "leg renamed").separators == ()

    def test_what_nobody_knows_is_parted_into_common_and_own(self):
        found = side_by_side(None, "own fluid")
        everything = {
            missing.what
            for option in (None, "own fluid")
            for item in thistlemoor(option).not_shown
            for missing in item.missing
        }
        common, own = set(found.unknown_in_all), [set(some) for some in found.unknown_apart]
        assert common | own[0] | own[1] == everything
        assert not common & (own[0] | own[1])
        assert any("feed" in what for what in own[0])
        assert not any("feed" in what for what in own[1])


class TestAdvice:
    def test_the_only_one_without_a_warning(self):
        found = side_by_side("nylon", None)
        assert found.advice.best == 1
        assert answer(found) == "As written is the only one without a WARNING."

    def test_nobody_is_best_where_all_have_one(self):
        found = side_by_side("nylon", "other nylon")
        assert found.advice.best is None
        assert answer(found) == "None of them is sound: each has at least one WARNING."

    def test_nobody_is_best_where_each_wins_something(self):
        found = side_by_side("one tube", "dash 3")
        wins = dict(zip(found.advice.standing, found.advice.wins, strict=True))
        assert "leak paths" in wins[0]
        assert "yield over panic foot" in wins[1]
        assert found.advice.best is None
        assert "the figures do not choose" in answer(found)

    def test_nobody_is_best_where_they_do_not_do_the_same_job(self):
        """Without its reservoir it has fewer joints, because it has fewer things to join."""
        found = side_by_side(None, "own fluid")
        assert row(found, "leak paths").result.winners == (1,)
        assert (found.advice.same_job, found.advice.best) == (False, None)
        assert answer(found) == "As written and own fluid do not do the same job: choose that first."

    def test_nobody_is_best_where_nothing_is_better(self):
        assert side_by_side(None, "leg renamed").advice.best is None

    def test_what_is_said_against_the_ones_left(self):
        found = side_by_side(None, "steel leg")
        behind = dict(zip(found.advice.standing, found.advice.behind, strict=True))
        assert "bend-radius-below-minimum" in {one.rule for one in behind[1]}
        assert "bend-radius-below-minimum" not in {one.rule for one in behind[0]}


class TestSheet:
    def sheet(self, *options):
        return compare_sheet(tuple(thistlemoor(option) for option in options))

    def test_the_answer_comes_first_and_what_to_do_last(self):
        blocks = self.sheet(None, "nylon").blocks
        assert isinstance(blocks[0], Paragraph)
        assert blocks[0].tone is Tone.LEAD
        assert isinstance(blocks[-1], Paragraph)
        assert blocks[-1].text.startswith("So: as written")

    def test_who_is_out_is_said_with_the_reason(self):
        items = [
            item
            for block in self.sheet(None, "nylon").blocks
            if isinstance(block, Bullets)
            for item in block.items
        ]
        assert any(item.startswith("nylon: not sound, because old is plastic") for item in items)

    def test_more_options_than_fit_abreast_come_in_several_tables(self):
        options = (None, "one hose", "dash 3", "steel leg", "own fluid")
        tables = [block for block in self.sheet(*options).blocks if isinstance(block, Table)]
        names = [name for table in tables if table.columns[-1] == "best" for name in table.columns[1:-1]]
        assert names == ["as written", "one hose", "dash 3", "steel leg", "own fluid"]
        for table in tables:
            assert all(len(line) == len(table.columns) for line in table.rows)

    def test_an_unknown_fluid_leaves_the_mass_unknown_and_without_a_winner(self):
        text = TEXT.replace("fluid: MIL-PRF-5606\n", "fluid: unknown\n", 1)
        evaluations = tuple(evaluate_text(text, "text", option) for option in (None, "one hose"))
        found = compare(evaluations)
        assert row(found, "mass").result.outcome is Outcome.UNKNOWN
        assert "which brake fluid is used" in {missing.what for missing in found.advice.measure}
        table = next(block for block in compare_sheet(evaluations).blocks if isinstance(block, Table))
        (line,) = [line for line in table.rows if line[0] == "mass, with fluid"]
        assert line[1].startswith("unknown")
        assert line[-1] == "no winner: unknown"
