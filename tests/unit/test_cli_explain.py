"""`firmpedal explain`: joints by the numbers that are printed, and each point of a line once."""

import pytest
from evaluated import EXAMPLE, example
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.report.joint_numbers import joint_numbers, number_asked


def explain(*words):
    return CliRunner(env={"COLUMNS": "80", "NO_COLOR": "1"}).invoke(app, ["explain", str(EXAMPLE), *words])


@pytest.mark.parametrize("asked", ["joint {}", "{}", "Joint {}", "joint no. {}", " #{} "])
def test_every_joint_is_found_by_its_number(asked):
    for name, number in joint_numbers(example()).items():
        result = explain(asked.format(number))
        assert result.exit_code == 0
        assert result.stdout.startswith(f"{name} (joint {number})\n")
        assert result.stdout == explain(name).stdout


@pytest.mark.parametrize("asked", ["joint 0", "99", "joint 1000"])
def test_a_number_that_no_joint_has_is_told_with_those_there_are(asked):
    result = explain(asked)
    last = len(joint_numbers(example()))
    assert result.exit_code == 2
    assert f"no joint {asked.split()[-1]}. They go from 1 to {last}" in " ".join(result.stderr.split())


@pytest.mark.parametrize("words", ["left_line.via.1", "joint", "joint 1 of 2", "1.5", "-1", "12345678901"])
def test_other_words_are_no_number(words):
    assert number_asked(words) is None


def test_each_point_is_listed_once_in_the_order_of_the_line():
    rows = [row.split(" in  ") for row in explain("left_line").stdout.splitlines() if ".via." in row]
    assert [place for _, place in rows] == [
        f"lines.left_line.via.{n}  (left_line via {n})" for n in range(1, 9)
    ]
    assert rows[0][0] == "[7.00, -9.00, 0]"


def test_one_figure_of_a_point_can_still_be_asked_for():
    assert explain("lines.left_line.via.1.2").stdout.startswith("left_line via 1 right = -9.00 in\n")
