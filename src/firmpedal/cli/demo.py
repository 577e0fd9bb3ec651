"""`firmpedal demo`: the whole job on an invented aircraft."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.rule import Rule
from rich.text import Text

from firmpedal.cli.check import print_check
from firmpedal.cli.lines import print_lines
from firmpedal.cli.packet import write_packet
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block
from firmpedal.project.examples import examples
from firmpedal.report.buying import parts_sheet

if TYPE_CHECKING:
    from pathlib import Path

EXAMPLE, OPTION = "brindlewick", "rigid"


def run(out: Path) -> int:
    """Check the example as it is and converted, list its parts and lines, write its packet."""
    screen = console()
    source = examples()[EXAMPLE]
    out.mkdir(parents=True, exist_ok=True)
    file = out / source.name
    if not file.exists():  # a copy that was played with is the builder's own
        file.write_text(source.read_text(encoding="utf-8"), encoding="utf-8")
    before, after = evaluated(file, None), evaluated(file, OPTION)
    if before is None or after is None:
        return UNUSABLE
    screen.print(Rule(Text("The aircraft as it is: what is wrong")))
    print_check(screen, before)
    screen.print(Rule(Text("Converted to rigid tube and hose: what is left to look at")))
    print_check(screen, after)
    screen.print(Rule(Text("What to buy")))
    for block in parts_sheet(after).blocks:
        print_block(screen, block)
    screen.print(Rule(Text("How each line is made")))
    print_lines(screen, after)
    screen.print(Rule(Text("On paper")))
    return write_packet(after, out / f"{EXAMPLE}_{OPTION}.pdf")
