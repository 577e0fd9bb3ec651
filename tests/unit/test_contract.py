"""What `--json` prints, by the command itself: one object, these keys, SI units, these exit codes."""

from __future__ import annotations

import json
import math
from functools import cache
from pathlib import Path

import pytest

from commands import Done, firmpedal
from firmpedal.checks.rules import RULES
from texts import EXAMPLES, SMALL, edited, small

BRINDLEWICK = str(EXAMPLES / "brindlewick.yaml")
QUILLFEN = str(SMALL / "quillfen.yaml")
TARNHOLT = str(SMALL / "tarnholt.yaml")
COMMANDS = ("check", "parts", "lines")
HEAD = {"schema", "file", "option"}
SOUND, NOT_SOUND_OR_NOT_SHOWN, UNUSABLE = 0, 1, 2


@cache
def run(command: str, file: str, *more: str) -> Done:
    return firmpedal(command, file, *more, "--json")


def saved(folder: Path, text: str) -> str:
    """Write a text to a file of its own and give its path."""
    file = folder / f"aircraft{len(list(folder.iterdir()))}.yaml"
    file.write_text(text, encoding="utf-8")
    return str(file)


def printed(command: str, file: str, *more: str) -> dict:
    """The one object on stdout; anything before or after it, or a number that JSON has not, is an error."""
    text = run(command, file, *more).stdout

    def refuse(constant: str) -> None:
        raise AssertionError(f"{constant} in the output")

    data, end = json.JSONDecoder(parse_constant=refuse).raw_decode(text)
    assert text[end:] == "\n"
    assert isinstance(data, dict)
    return data


@pytest.fixture
def broken(tmp_path):
    return saved(tmp_path, edited(small("quillfen"), ("bore: 5/8", "bore: five eighths")))


class TestExitCodes:
    @pytest.mark.parametrize(
        ("file", "option", "code", "verdict"),
        [
            (QUILLFEN, (), SOUND, "sound"),
            (BRINDLEWICK, (), NOT_SOUND_OR_NOT_SHOWN, "not sound"),
            (BRINDLEWICK, ("--option", "rigid"), NOT_SOUND_OR_NOT_SHOWN, "not shown"),
        ],
    )
    def test_check_ends_with_the_verdict(self, file, option, code, verdict):
        assert run("check", file, *option).returncode == code
        assert printed("check", file, *option)["verdict"] == verdict

    @pytest.mark.parametrize("command", ["parts", "lines"])
    @pytest.mark.parametrize("file", [QUILLFEN, BRINDLEWICK])
    def test_lists_of_a_usable_file_end_with_nothing(self, command, file):
        done = run(command, file)
        assert (done.returncode, done.stderr) == (0, "")

    @pytest.mark.parametrize("command", COMMANDS)
    def test_a_broken_file_cannot_be_used_by_any_command(self, command, broken):
        assert run(command, broken).returncode == UNUSABLE

    @pytest.mark.parametrize("command", COMMANDS)
    @pytest.mark.parametrize(
        ("name", "content"),
        [
            ("gone.yaml", None),
            ("empty.yaml", b""),
            ("photo.yaml", b"\x89PNG\0\xff"),
            ("list.yaml", b"- 1"),
        ],
    )
    def test_what_is_no_description_cannot_be_used(self, command, name, content, tmp_path):
        file = tmp_path / name
        if content is not None:
            file.write_bytes(content)
        assert run(command, str(file)).returncode == UNUSABLE
        assert printed(command, str(file))["errors"]

    @pytest.mark.parametrize("command", COMMANDS)
    def test_an_option_that_is_not_there_cannot_be_used(self, command):
        assert run(command, BRINDLEWICK, "--option", "ridgid").returncode == UNUSABLE
        (error,) = printed(command, BRINDLEWICK, "--option", "ridgid")["errors"]
        assert "ridgid" in error["message"]
        assert "rigid" in error["try"][0]


class TestErrors:
    @pytest.mark.parametrize("command", COMMANDS)
    def test_say_where_what_and_what_to_try(self, command, broken):
        data = printed(command, broken)
        assert data.keys() == HEAD | {"errors"}
        assert (data["schema"], data["file"], data["option"]) == (1, broken, None)
        (error,) = data["errors"]
        assert error.keys() == {"file", "line", "column", "message", "text", "try"}
        text = Path(broken).read_text(encoding="utf-8").splitlines()
        assert text[error["line"] - 1][error["column"] - 1 :] == error["text"] == "five eighths"
        assert "bore" in error["message"]
        assert isinstance(error["try"], list)

    def test_people_read_them_beside_the_object(self, broken):
        words = run("check", broken).stderr.replace("\n", "")  # a long path wraps at the width there is
        assert f"{broken}:9:11: cylinder bore" in words


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize(("option", "named"), [((), None), (("--option", "rigid"), "rigid")])
def test_every_object_has_a_head(command, option, named):
    data = printed(command, BRINDLEWICK, *option)
    body = {
        "check": {"verdict", "findings", "unknown"},
        "parts": {"items", "order", "consumables", "tools"},
        "lines": {"lines"},
    }
    assert data.keys() == HEAD | body[command]
    assert (data["schema"], data["file"], data["option"]) == (1, BRINDLEWICK, named)


class TestCheck:
    RULE_NAMES = frozenset(rule.name for rule in RULES)

    @pytest.mark.parametrize("option", [(), ("--option", "rigid")])
    def test_findings(self, option):
        found = printed("check", BRINDLEWICK, *option)["findings"]
        assert found
        for finding in found:
            assert finding.keys() == {
                *("rule", "level", "place", "message", "measured", "allowed", "source", "try", "accepted")
            }
            assert finding["rule"] in self.RULE_NAMES
            assert finding["level"] in ("WARNING", "CAUTION", "NOTE")
            assert finding["message"]
            assert finding["accepted"] is None
            assert finding["try"]
            assert all(isinstance(advice, str) for advice in finding["try"])
            assert all(source.keys() == {"key", "mark"} for source in finding["source"])
            is_place(finding["place"], BRINDLEWICK)

    def test_worst_come_first(self):
        order = ["WARNING", "CAUTION", "NOTE"]
        levels = [order.index(finding["level"]) for finding in printed("check", BRINDLEWICK)["findings"]]
        assert levels == sorted(levels)

    def test_figures_are_nothing_or_a_number_with_unit_and_relation(self):
        found = printed("check", BRINDLEWICK)["findings"]
        kinds = {(finding["measured"] is None, finding["allowed"] is None) for finding in found}
        assert kinds == {(True, True), (False, False)}
        for figure in (finding[key] for finding in found for key in ("measured", "allowed")):
            assert figure is None or figure.keys() == {"value", "unit", "relation"}
            assert figure is None or isinstance(figure["value"], float)
            assert figure is None or figure["relation"] in ("at most", "at least")

    def test_figures_are_in_si_units(self):
        found = [item for item in printed("check", BRINDLEWICK)["findings"] if item["rule"] == "stroke-short"]
        assert [item["allowed"] for item in found] == [
            {"value": pytest.approx(0.80 * 0.0254), "unit": "m", "relation": "at most"}
        ] * 2
        found = [item for item in printed("check", BRINDLEWICK)["findings"] if "rating" in item["rule"]]
        assert {item["measured"]["unit"] for item in found} == {"Pa"}
        assert found[0]["measured"]["value"] == pytest.approx(978 * 6894.757, rel=1e-3)

    def test_unknown(self):
        unknown = printed("check", BRINDLEWICK, "--option", "rigid")["unknown"]
        assert unknown
        for item in unknown:
            assert item.keys() == {"place", "what", "needed_by"}
            assert item["what"]
            assert item["needed_by"]
            assert set(item["needed_by"]) <= self.RULE_NAMES
            is_place(item["place"], BRINDLEWICK)
        asked = [(item["place"]["object"], item["what"]) for item in unknown]
        assert len(asked) == len(set(asked))

    def test_sound_leaves_nothing_to_say(self):
        data = printed("check", QUILLFEN)
        assert (data["findings"], data["unknown"]) == ([], [])

    def test_an_accepted_finding_carries_the_reason_and_stays(self, tmp_path):
        accepted = "accepted:\n  - {rule: clamp-spacing, at: run, reason: it lies in foam}\nlines:\n"
        edits = (("lines:\n", accepted), ("radius: 3/4\n", "radius: 3/4\n    clamps: none\n"))
        (finding,) = printed("check", saved(tmp_path, edited(small("quillfen"), *edits)))["findings"]
        assert (finding["rule"], finding["accepted"]) == ("clamp-spacing", "it lies in foam")


def is_place(place: dict, file: str) -> None:
    """A place names an object of the file and the line on which it, or what holds it, is written."""
    assert place.keys() == {"object", "file", "line", "column"}
    assert place["file"] == file
    text = Path(file).read_text(encoding="utf-8").splitlines()
    assert 1 <= place["line"] <= len(text)
    assert 1 <= place["column"] <= len(text[place["line"] - 1]) + 1
    assert place["object"]


class TestParts:
    KEYS = frozenset(
        {
            *("designation", "category", "quantity", "size", "material", "description", "where", "spare"),
            *("also_known_as", "lengths", "total_length"),
        }
    )
    CATEGORIES = frozenset(
        {
            *(
                "fitting",
                "jam nut",
                "coupling nut",
                "sleeve",
                "tube",
                "hose",
                "washer",
                "clamp",
                "cap",
                "other",
            ),
        }
    )

    @pytest.mark.parametrize("option", [(), ("--option", "rigid")])
    def test_items(self, option):
        items = printed("parts", BRINDLEWICK, *option)["items"]
        assert items
        for item in items:
            assert item.keys() == self.KEYS
            assert item["category"] in self.CATEGORIES
            assert isinstance(item["quantity"], int)
            assert item["quantity"] > 0
            assert item["where"]
            assert item["spare"] is False
            assert isinstance(item["also_known_as"], list)

    def test_lengths_belong_to_what_is_cut(self):
        items = printed("parts", BRINDLEWICK, "--option", "rigid")["items"]
        for item in items:
            cut = item["category"] in ("tube", "hose")
            assert bool(item["lengths"]) == cut
            if cut:
                assert len(item["lengths"]) == item["quantity"]
                assert item["total_length"] == pytest.approx(sum(item["lengths"]))
            else:
                assert item["total_length"] is None
        (tube,) = [item for item in items if item["category"] == "tube"]
        assert tube["total_length"] == pytest.approx(2 * 39.67 * 0.0254, abs=1e-3)

    def test_designations_are_whole(self):
        items = printed("parts", BRINDLEWICK, "--option", "rigid")["items"]
        fittings = [item for item in items if item["category"] == "fitting"]
        assert {(item["designation"], item["size"], item["material"]) for item in fittings} == {
            (f"{family}-4D", "4", "aluminium") for family in ("AN816", "AN822", "AN832", "AN833")
        }


class TestLines:
    KEYS = frozenset(
        {
            *("name", "kind", "from", "to", "material", "points", "path_length", "developed_length"),
            *("cut_length", "order_length", "straights", "bends"),
        }
    )

    @staticmethod
    def lines(file: str, *option: str) -> dict[str, dict]:
        return {line["name"]: line for line in printed("lines", file, *option)["lines"]}

    @pytest.mark.parametrize("option", [(), ("--option", "rigid")])
    def test_every_line_has_its_keys(self, option):
        for line in self.lines(BRINDLEWICK, *option).values():
            assert line.keys() == self.KEYS
            assert line["kind"] in ("tube", "hose", "plastic")
            assert all(len(point) == 3 for point in line["points"])
            assert len(line["points"]) >= 2

    def test_a_tube_has_lengths_straights_and_bends(self):
        leg = self.lines(BRINDLEWICK, "--option", "rigid")["left_leg"]
        assert (leg["from"], leg["to"], leg["material"]) == ("left_floor.below", "left_axle.upper", "5052-O")
        assert leg["points"][0] == pytest.approx([7.0 * 0.0254, -9.0 * 0.0254, -0.9 * 0.0254])
        assert leg["developed_length"] == pytest.approx(39.63 * 0.0254, abs=2e-4)
        assert leg["developed_length"] < leg["cut_length"] == leg["order_length"]
        assert leg["path_length"] > leg["developed_length"]
        assert len(leg["straights"]) == len(leg["bends"]) + 1 == 4
        assert [bend["angle"] for bend in leg["bends"]] == pytest.approx([58.6, 39.1, 33.1], abs=0.05)
        assert [bend["radius"] for bend in leg["bends"]] == pytest.approx([0.75 * 0.0254] * 3)
        arcs = [math.radians(bend["angle"]) * bend["radius"] for bend in leg["bends"]]
        assert leg["developed_length"] == pytest.approx(sum(leg["straights"]) + sum(arcs))

    @pytest.mark.parametrize("file", [BRINDLEWICK, QUILLFEN, TARNHOLT])
    def test_rotations_start_with_nothing_and_stay_within_half_a_turn(self, file):
        option = ("--option", "rigid") if file == BRINDLEWICK else ()
        tubes = [line for line in self.lines(file, *option).values() if line["kind"] == "tube"]
        assert tubes
        for tube in tubes:
            assert all(bend.keys() == {"angle", "rotation", "radius"} for bend in tube["bends"])
            assert tube["bends"][0]["rotation"] == 0
            assert all(-180 < bend["rotation"] <= 180 for bend in tube["bends"])

    def test_a_half_turn_is_plus_180(self, tmp_path):
        """A tube in one plane that bends one way and then the other turns over by half a turn."""
        via = "      - [10, 0, -6]\n"
        for points, rotations in (("[10, 0, -2], [13, 0, -6]", [0, 0]), ("[10, 0, 0], [7, 0, -6]", [0, 180])):
            text = edited(small("quillfen"), ("    via:\n", ""), (via, f"    via: [{points}]\n"))
            (tube,) = self.lines(saved(tmp_path, text)).values()
            found = [bend["rotation"] for bend in tube["bends"]]
            assert found == pytest.approx(rotations, abs=1e-9)

    def test_a_hose_is_bought_and_not_bent(self):
        hose = self.lines(BRINDLEWICK, "--option", "rigid")["left_tail"]
        assert hose["order_length"] == pytest.approx(9.0 * 0.0254)
        assert hose["path_length"] == pytest.approx(8.24 * 0.0254, abs=2e-4)
        for key in ("developed_length", "cut_length", "straights", "bends"):
            assert hose[key] is None

    def test_plastic_is_cut_to_its_path(self):
        plastic = self.lines(BRINDLEWICK)["left_line"]
        assert plastic["path_length"] == plastic["cut_length"] == plastic["order_length"]
        for key in ("developed_length", "straights", "bends"):
            assert plastic[key] is None

    def test_what_is_unknown_is_null(self, tmp_path):
        text = edited(small("quillfen"), ("[10, 0, -6]", "[10, unknown, -6]"))
        (tube,) = self.lines(saved(tmp_path, text)).values()
        assert tube["points"][1] == [pytest.approx(0.254), None, pytest.approx(-6 * 0.0254)]
        for key in ("path_length", "developed_length", "cut_length", "order_length"):
            assert tube[key] is None
