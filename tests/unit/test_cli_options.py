"""`compare` and `retrofit` by the command itself: exit codes, names, and what `--json` prints."""

from __future__ import annotations

import json
from functools import cache

import pytest
from options_text import OPTIONS, TEXT

from commands import Done, firmpedal

UNUSABLE = 2


@pytest.fixture(scope="module")
def file(tmp_path_factory) -> str:
    path = tmp_path_factory.mktemp("options") / "thistlemoor.yaml"
    path.write_text(TEXT, encoding="utf-8")
    return str(path)


@cache
def run(*words: str) -> Done:
    return firmpedal(*words)


def data(*words: str) -> dict:
    return json.loads(run(*words, "--json").stdout)


class TestCompare:
    def test_as_written_and_every_option_without_names(self, file):
        assert data("compare", file)["options"] == list(OPTIONS)

    def test_one_name_is_set_beside_the_file_as_written(self, file):
        assert data("compare", file, "dash 3")["options"] == [None, "dash 3"]

    def test_names_come_in_the_order_given(self, file):
        assert data("compare", file, "dash 3", "as written", "one hose")["options"] == [
            "dash 3",
            None,
            "one hose",
        ]

    def test_it_ends_with_nothing(self, file):
        done = run("compare", file, "one hose")
        assert (done.returncode, done.stderr) == (0, "")
        assert done.stdout.startswith("Thistlemoor: as written, one hose\n")

    @pytest.mark.parametrize("name", ["one hoes", "One Hose"])
    def test_a_name_that_is_not_there_gets_a_near_miss(self, file, name):
        done = run("compare", file, name)
        assert done.returncode == UNUSABLE
        assert "did you mean `one hose`?" in done.stderr
        assert done.stdout == ""

    def test_a_name_that_is_not_there_is_an_error_in_json_too(self, file):
        (error,) = data("compare", file, "as written", "one hoes")["errors"]
        assert "one hoes" in error["message"]
        assert "one hose" in error["try"][0]

    def test_keys(self, file):
        found = data("compare", file, "one hose")
        assert found.keys() == {
            *("schema", "file", "options", "rows", "separators", "unknown_in_all", "unknown_apart", "advice"),
        }
        assert found["schema"] == 1
        for row in found["rows"]:
            assert row.keys() == {"measure", "cells", "outcome", "winners", "measure_first"}
            assert len(row["cells"]) == 2
            for cell in row["cells"]:
                assert cell.keys() == {"figure", "about", "change"}
        assert found["advice"].keys() == {
            *("out", "standing", "wins", "behind", "same_job", "decided", "best", "measure"),
        }

    def test_figures_are_ranges_in_si(self, file):
        rows = {row["measure"]: row for row in data("compare", file, "one hose")["rows"]}
        mass = rows["mass"]["cells"][0]["figure"]
        assert mass["unit"] == "kg"
        assert 0.05 < mass["least"] < mass["most"] < 2
        assert rows["mass"]["cells"][0]["change"] is None
        assert rows["mass"]["cells"][1]["change"]["least"] < 0

    def test_a_file_that_is_not_there(self):
        assert run("compare", "nowhere.yaml").returncode == UNUSABLE


class TestRetrofit:
    def test_from_the_file_as_written_without_a_name(self, file):
        found = data("retrofit", file, "--to", "one hose")
        assert (found["from"], found["to"]) == (None, "one hose")

    def test_from_one_option_to_another(self, file):
        found = data("retrofit", file, "--from", "one hose", "--to", "As Written")
        assert (found["from"], found["to"]) == ("one hose", None)

    def test_it_ends_with_nothing(self, file):
        done = run("retrofit", file, "--to", "one hose")
        assert (done.returncode, done.stderr) == (0, "")
        assert "1. Make ready" in done.stdout

    def test_to_where_it_is_already(self, file):
        done = run("retrofit", file, "--from", "dash 3", "--to", "dash 3")
        assert done.returncode == 0
        assert "Nothing to do from dash 3 to dash 3." in done.stdout

    def test_without_a_goal_there_is_no_way(self, file):
        assert run("retrofit", file).returncode == UNUSABLE

    @pytest.mark.parametrize("words", [("--to", "dash 33"), ("--to", "dash 3", "--from", "dahs 3")])
    def test_a_name_that_is_not_there_gets_a_near_miss(self, file, words):
        done = run("retrofit", file, *words)
        assert done.returncode == UNUSABLE
        assert "did you mean `dash 3`?" in done.stderr

    def test_keys(self, file):
        found = data("retrofit", file, "--to", "floor moved")
        assert found.keys() == {
            *("schema", "file", "from", "to", "keep", "reuse", "remove", "buy", "gauge", "mixed_metals"),
            *("turned_elbows", "steps"),
        }
        piece = {"designation", "category", "size", "material", "place", "owner", "line", "length"}
        assert all(item.keys() == piece for item in (*found["keep"], *found["buy"]))
        assert all(item.keys() == piece | {"why_not"} for item in found["remove"])
        assert all(item.keys() == {"before", "after", "look"} for item in found["reuse"])
        for step in found["steps"]:
            assert step.keys() == {"phase", "action", "subject", "parts", "about", "beforehand", "words"}

    def test_lengths_are_in_metres(self, file):
        """24 down and 20 aft make 44 in; with 6 percent 46.64, to the next half inch 47."""
        bought = data("retrofit", file, "--to", "one hose")["buy"]
        (hose,) = [item for item in bought if item["category"] == "hose"]
        assert hose["length"] == pytest.approx(47 * 0.0254)
