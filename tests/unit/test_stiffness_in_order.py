"""A grade's own stiffness bounds it hot and in frost: plastic is never firmer hot, nor softer in frost."""

import pytest
from evaluated import EXAMPLE

from firmpedal.analysis.swelling import frost_wall, swell
from firmpedal.pipeline import evaluate_text

TEXT = EXAMPLE.read_text(encoding="utf-8")
MADE_OF = "    made of: plastic nylon 1/4 x .040\n"


def walls(cool):
    assert MADE_OF in TEXT
    evaluation = evaluate_text(
        TEXT.replace(MADE_OF, f"{MADE_OF}    stiffness: {{cool: {cool} MPa}}\n", 1), "b"
    )
    line = next(line for line in evaluation.laid if line.name == "left_line")
    cylinder = next(each for each in evaluation.results.cylinders if each.cylinder == "left_cylinder")
    hard = cylinder.pressures[1]
    hot = next(zone.temperature for zone in evaluation.aircraft.zones if zone.temperature.known)
    own = swell(line, hard, "hard", hot, evaluation.aircraft.fluid)
    return frost_wall(line, hard, "hard"), own.wall, own.hot_wall


@pytest.mark.parametrize("cool", [150, 480, 1000, 2000])
def test_it_swells_least_in_frost_and_most_where_it_is_hot(cool):
    frost, wall, hot = walls(cool)
    more = 1 + 1e-12
    for firm, soft in ((frost, wall), (wall, hot)):  # ranges by Poisson's ratio alone, each end by itself
        assert firm.low <= soft.low * more
        assert firm.high <= soft.high * more


def test_in_between_the_table_s_range_stands():
    frost, wall, hot = walls(480)
    assert frost.high < wall.low / 2 < hot.low / 4  # 1,324 to 1,863 MPa, 480, 167 to 186
