"""Evaluations that the tests of sheets share: the example, and a file full of awkward things."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.packet import packet_sheets
from firmpedal.report.sheet import Block, Bullets, Drawing, Facts, Figures, Group, Label, Sheet, Sum, Table

EXAMPLE = Path(__file__).parents[2] / "examples" / "brindlewick.yaml"

# An invented aircraft in millimetres with long names, many bends, an open port and unknown figures.
AWKWARD = """
firmpedal: 1
aircraft:
  name: An aircraft whose owner gave it a remarkably long name that goes on
  gear: nosewheel
  brakes: toe
  landing weight: 600 kg
  revision: draft-of-a-very-long-revision-name-without-any-blank-in-it-at-all-number-17
units: {length: mm, angle: deg, pressure: bar, force: N, volume: ml, temperature: degC, mass: kg, torque: N m}
fluid: unknown
attitudes:
  parked: {nose up: 8}
  nose_down_in_a_ditch: {nose up: -5}
components:
  the_left_master_cylinder_with_a_long_name:
    kind: master cylinder
    side: left
    bore: 16
    stroke: 25
    pedal: left_pedal
    outlet: outlet_at_the_very_bottom
    ports:
      outlet_at_the_very_bottom:
        {thread: 1/8 NPT female, faces: down, seat: [330, -190, 76], seat measured with: AN816-4D}
  left_caliper:
    kind: caliper
    side: left
    pistons: {bore: 38, count per side: 1}
    ports:
      inlet: {thread: 1/8 NPT female, faces: up, seat: [900, -800, -600], seat measured with: AN816-4D}
  right_caliper:
    kind: caliper
    side: right
    pistons: {bore: 38, count per side: 1}
    ports:
      inlet: {thread: 1/8 NPT female, faces: up, seat: unknown}
pedals:
  left_pedal: {side: left, brake: {pad: 120, arm: 60}}
bench: {bend radius: 20}
lines:
  a_line_with_a_very_long_name_and_many_bends_left:
    from: the_left_master_cylinder_with_a_long_name.outlet_at_the_very_bottom
    to: left_caliper.inlet
    made of: tube 5052-O 1/4 in x .035 in
    via: [[330, -190, 0], [400, -190, -50], [460, -260, -50], [460, -320, -120], [540, -320, -200],
          [540, -420, -200], [620, -420, -300], [620, -520, -360], [700, -600, -360], [700, -700, -420],
          [800, -700, -500], [900, -800, -480]]
    clamps: [100, 300, 500, 700, 900]
accepted:
  - {rule: joint-does-not-close, at: right_caliper, reason: the right side comes next winter}
  - rule: clamp-spacing
    at: a_line_with_a_very_long_name_and_many_bends_left
    reason: the line is glassed in along the whole of the leg
"""


@cache
def example(option: str | None = None) -> Evaluation:
    return evaluate_text(EXAMPLE.read_text(encoding="utf-8"), EXAMPLE.name, option)


@cache
def awkward() -> Evaluation:
    return evaluate_text(AWKWARD, "/some/where/on/a/disk/awkward.yaml")


@cache
def sheets(option: str | None = None) -> dict[str, Sheet]:
    return {sheet.title: sheet for sheet in packet_sheets(example(option))}


def blocks(sheet: Sheet | Group) -> list[Block]:
    """All blocks of a sheet, those in groups among them."""
    found: list[Block] = []
    for block in sheet.blocks:
        found += blocks(block) if isinstance(block, Group) else [block]
    return found


def of_kind(sheet: Sheet, kind):
    return [block for block in blocks(sheet) if isinstance(block, kind)]


def words(thing: Sheet | Block) -> str:
    """All that is written on a sheet or a block, line by line."""
    if isinstance(thing, Sheet):
        return "\n".join([thing.title, thing.subtitle, *(words(block) for block in blocks(thing))])
    lines = _LINES.get(type(thing))
    return "\n".join(lines(thing)) if lines else getattr(thing, "text", "")


_LINES = {
    Table: lambda table: [table.title, *table.columns, *(" | ".join(row) for row in table.rows)],
    Bullets: lambda bullets: bullets.items,
    Facts: lambda facts: [f"{term}: {text}" for term, text in facts.rows],
    Figures: lambda figures: [f"{item.label}: {item.text} ({item.note})" for item in figures.items],
    Drawing: lambda it: [*(mark.text for mark in it.marks if isinstance(mark, Label)), it.caption],
    Sum: lambda it: [it.result, it.equation, it.figures, *it.where, it.source],
}
