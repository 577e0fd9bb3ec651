"""`firmpedal identify`: what is this port, fitting or tube?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, print_block, print_json
from firmpedal.decide.identify import identify
from firmpedal.decide.identify_reading import display_of_asked, heard
from firmpedal.report.identify import identify_sheet
from firmpedal.report.identify_data import identify_data

if TYPE_CHECKING:
    from firmpedal.decide.identify_reading import Asked

NOTHING = (
    "Nothing was measured. Say at least one of --outside-diameter, --inside-diameter, --threads or --pitch, "
    "--taper, --seat-angle, --tube, --turns: for example --outside-diameter '0.400 in' --threads 27"
)


def run(asked: Asked, *, as_json: bool) -> int:
    """Identify what was measured; the result is the exit code."""
    measured, faults = heard(asked)
    wrong = [f"--{name.replace('_', '-')}: {words}" for name, words in faults.items()]
    if not wrong and not measured.anything:
        wrong = [NOTHING]
    if wrong:
        for words in wrong:
            console(error=True).print(Text(words))
        return UNUSABLE
    found = identify(measured)
    if as_json:
        print_json(identify_data(found))
    else:
        out = console()
        for block in identify_sheet(found, display_of_asked(asked)).blocks:
            print_block(out, block)
    return 0 if found.settled else 1
