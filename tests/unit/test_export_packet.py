"""The printed packet: the same bytes every time, everything on the page, every page with its foot."""

from __future__ import annotations

import subprocess
import sys
from functools import cache
from itertools import combinations, pairwise

import pytest
from evaluated import EXAMPLE, awkward, example
from printed_pages import reader, runs

from firmpedal.export.packet import page_count, write
from firmpedal.export.typst import pdf
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.packet import footer_of, packet_sheets
from firmpedal.report.sheet import Facts, Heading, Paragraph, Sheet
from texts import example as aircraft

SIDE = 51.0  # 18 mm
BLANK = 7.0  # the blank after the last word of a line may hang over the margin
LETTER_LOSES = 50.0  # US letter is that much shorter than A4, in points
WHITE_OF_PRINTERS = 12.0
WIDTH = 595.3
SMALLEST = 10.4


@cache
def evaluation_of(which: str) -> Evaluation:
    if which in {"oatmere", "fennimoss"}:
        return evaluate_text(aircraft(which), which, "rigid" if which == "fennimoss" else None)
    return {"written": example, "rigid": lambda: example("rigid"), "awkward": awkward}[which]()


@cache
def printed(which: str) -> bytes:
    evaluation = evaluation_of(which)
    return pdf(packet_sheets(evaluation), footer_of(evaluation))


@cache
def pages(which: str) -> tuple[str, ...]:
    return tuple(page.extract_text() for page in reader(printed(which)).pages)


@cache
def laid(which: str):
    """Each page with what stands where on it."""
    return tuple((page, tuple(runs(page))) for page in reader(printed(which)).pages)


def page_titled(which: str, title: str) -> str:
    return next(text for text in pages(which) if text.startswith(title))


def test_printing_twice_gives_the_same_bytes():
    evaluation = example("rigid")
    assert pdf(packet_sheets(evaluation), footer_of(evaluation)) == printed("rigid")


def test_printing_in_another_process_gives_the_same_bytes(tmp_path):
    program = (
        "import sys; from pathlib import Path; from firmpedal.pipeline import evaluate_text;"
        "from firmpedal.report.packet import packet_sheets; from firmpedal.export.packet import write;"
        "file, out = map(Path, sys.argv[1:]);"
        "evaluation = evaluate_text(file.read_text(encoding='utf-8'), file.name, 'rigid');"
        "write(packet_sheets(evaluation), evaluation, out)"
    )
    out = tmp_path / "packet.pdf"
    environment = {"PYTHONHASHSEED": "7", "TZ": "Pacific/Auckland", "SOURCE_DATE_EPOCH": "1"}
    subprocess.run([sys.executable, "-c", program, str(EXAMPLE), str(out)], check=True, env=environment)
    assert out.read_bytes() == printed("rigid")


def test_no_date_of_printing_is_in_the_file():
    found = reader(printed("rigid")).metadata
    assert found is not None
    assert not {"/CreationDate", "/ModDate"} & set(found)
    assert b"CreateDate" not in printed("rigid")


def test_writing_says_how_many_pages_there_are(tmp_path):
    path = tmp_path / "packet.pdf"
    assert write(packet_sheets(example()), example(), path) == len(pages("written"))
    assert path.read_bytes() == printed("written")


def test_writing_where_nothing_can_be_written_is_an_error_of_the_system(tmp_path):
    with pytest.raises(OSError, match=r"packet\.pdf|directory"):
        write(packet_sheets(example()), example(), tmp_path / "nowhere" / "packet.pdf")


@pytest.mark.parametrize("which", ["written", "rigid", "awkward"])
def test_every_page_has_its_foot_and_its_number(which):
    evaluation = evaluation_of(which)
    count = len(pages(which))
    assert page_count(printed(which)) == count
    for number, text in enumerate(pages(which), 1):
        plain = text.replace("\u200b", "").replace("\n", "")
        assert f"page {number} of {count}" in text
        assert footer_of(evaluation).aircraft in " ".join(text.split())
        assert (evaluation.aircraft.aircraft.revision or "-") in plain


@pytest.mark.parametrize("which", ["written", "rigid", "awkward"])
def test_nothing_is_printed_outside_the_margins_of_a4_or_of_letter(which):
    for page, written in laid(which):
        assert (round(page.mediabox.width), round(page.mediabox.height)) == (595, 842)
        for run in written:
            assert run.left >= SIDE
            assert run.right <= WIDTH - SIDE + BLANK
            assert run.foot >= LETTER_LOSES + WHITE_OF_PRINTERS
            assert run.foot + run.size <= page.mediabox.height - 20


@pytest.mark.parametrize("which", ["written", "rigid", "awkward"])
def test_no_text_runs_over_other_text(which):
    for number, (_page, all_of_it) in enumerate(laid(which), 1):
        written = [run for run in all_of_it if not (run.drawn and which == "awkward")]
        assert not [(number, one, other) for one, other in combinations(written, 2) if one.covers(other)]


@pytest.mark.parametrize("which", ["written", "rigid", "awkward"])
def test_no_type_is_too_small_for_the_bench(which):
    assert min(run.size for _page, written in laid(which) for run in written) >= SMALLEST


def test_only_type_that_comes_with_the_program_is_used():
    fonts = {
        str(font.get_object()["/BaseFont"]).partition("+")[2]
        for page in reader(printed("rigid")).pages
        for font in page["/Resources"].get("/Font", {}).values()
    }
    assert fonts
    assert all(name.startswith(("LibertinusSerif", "DejaVuSansMono")) for name in fonts)


def test_the_answer_is_on_the_first_page_and_the_figures_beside_it():
    first = pages("rigid")[0]
    assert first.startswith("Brindlewick")
    for words in ("option rigid", "NOT SHOWN: 10 things to measure", "489 psi", "978 psi", "1,304 psi",
                  "forward bulkhead face", "approves nothing", "under pressure"):  # fmt: skip
        assert words in " ".join(first.split())
    assert "NOT SOUND: 6 warnings" in pages("written")[0]


def test_the_contents_give_the_page_on_which_each_sheet_begins():
    first = " ".join(pages("rigid")[0].split())
    for title in ("To measure", "Parts to order", "Tube left_leg", "Torque and flare", "Sources used"):
        begins = next(n for n, text in enumerate(pages("rigid"), 1) if text.startswith(f"{title}\n"))
        assert f"{title} {begins} " in first


@pytest.mark.parametrize(
    ("title", "figures"),
    [
        (
            "Tube left_leg",
            ["39-21/32 in", "5-13/16 in", "37-3/16 in", "58.6\u00b0", "+129.5\u00b0", "4:20", "scale 1 :"],
        ),
        ("Tube right_leg", ["39-21/32 in", "-129.5\u00b0", "7:40", "Mirror image of left_leg"]),
        ("Hose left_tail", ["9 in", "NOT CHECKED"]),
        ("Torque and flare", ["50 to 65 lbf in", "0.349 to 0.359 in"]),
        ("Sums", ["pressure at the normal foot = 489 psi"]),
        ("Parts to order", ["AN818-4D", "AN819-4D", "AN833-4D"]),
    ],
)
def test_key_figures_are_on_their_page(title, figures):
    text = page_titled("rigid", title)
    for figure in figures:
        assert figure in text


def test_a_tube_card_of_the_example_fits_one_sheet_of_paper_printed_on_both_sides():
    for name in ("left_leg", "right_leg"):
        assert sum(text.startswith(f"Tube {name}") for text in pages("rigid")) == 2


def test_a_designation_is_never_torn_at_its_hyphen():
    many = " ".join(f"{'x' * (n % 5)} 5052-O" for n in range(120))
    made = pdf((Sheet("t", (Paragraph(many), Facts((("term", many),)))),), footer_of(example()))
    assert sum(page.extract_text().count("5052-O") for page in reader(made).pages) == 240


def test_a_block_nobody_knows_how_to_print_stops_the_printing():
    class Strange(Heading):
        pass

    with pytest.raises(Exception, match="unknown block"):
        pdf((Sheet("t", (Strange("x"),)),), footer_of(example()))


def test_words_of_the_typesetter_in_a_name_are_printed_as_they_are():
    text = EXAMPLE.read_text(encoding="utf-8").replace(
        "name: Brindlewick", "name: 'A #panic() *b* $x$ @y _z_ <w> [v] \\\\u'"
    )
    from firmpedal.pipeline import evaluate_text  # noqa: PLC0415

    evaluation = evaluate_text(text)
    found = reader(pdf(packet_sheets(evaluation)[:1], footer_of(evaluation))).pages[0].extract_text()
    assert "#panic() *b* $x$ @y _z_ <w> [v]" in found


def torn(text, names):
    """Names that a line of a page begins and the next one ends, each as what stands on the two lines."""
    lines = [line.strip() for line in text.replace("\u200b", "").splitlines()]
    for one, other in pairwise(lines):
        begins, ends = one.rpartition(" ")[2], other.partition(" ")[0].strip(",;.:)")
        if begins and ends and begins + ends in names:
            yield begins, ends


def names_of(evaluation):
    things = [*evaluation.aircraft.components, *evaluation.aircraft.bulkheads, *evaluation.aircraft.lines]
    ports = [f"{one.name}.{port.name}" for one in evaluation.aircraft.components for port in one.ports]
    return {*(one.name for one in things), *ports}


@pytest.mark.parametrize("which", ["rigid", "oatmere", "fennimoss"])
def test_names_that_fit_on_a_line_are_not_torn(which):
    names, text = names_of(evaluation_of(which)), pages(which)
    assert any("_" in name and name in page for name in names for page in text)
    assert [found for page in text for found in torn(page, names)] == []


def test_a_name_too_long_for_its_line_breaks_after_a_dot_first_and_never_before_a_joint():
    lines = [[line.strip() for line in page.replace("\u200b", "").splitlines()] for page in pages("awkward")]
    pairs = [pair for page in lines for pair in pairwise(page)]
    assert any(
        one.endswith("_long_name.") and other.startswith("outlet_at_the_very_bottom") for one, other in pairs
    )
    found = [pair for page in pages("awkward") for pair in torn(page, names_of(awkward()))]
    assert found
    assert all(begins[-1] in "._" for begins, _ in found)
