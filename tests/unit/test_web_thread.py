"""Which thread is it? The page says what the command says, and writes what was found where it belongs."""

from __future__ import annotations

import re
from html import unescape

import pytest
from nicegui import ui
from nicegui.testing import user_simulation

from firmpedal.decide.identify import identify
from firmpedal.decide.identify_reading import Asked, display_of_asked, heard
from firmpedal.decide.thread_spelled import spelled_as
from firmpedal.model.part import Gender
from firmpedal.project.layouts import chosen, layout_text
from firmpedal.report.identify import identify_sheet
from firmpedal.report.looks import LOOK
from firmpedal.report.sheet import Paragraph, Table, Tone
from firmpedal.web import addresses, app
from firmpedal.web.pages import buy
from firmpedal.web.sheets import WHICH, sheets_html
from firmpedal.web.shelf import Shelf
from firmpedal.web.thread.typed import asked_of, typed

TEXT = layout_text(chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="no"), "mine.yaml")
INLET = "components.left_caliper.ports.inlet.thread"
OUTLET = "components.left_cylinder.ports.outlet.thread"
FOUND = "where=female&wide=0.34&threads=27"  # inside a 1/8-27 port; the test of the sheet says why


def shown(user):
    """All that is seen of a page as plain words."""
    every = sorted(user.find(kind=ui.html).elements, key=lambda each: each.id)
    made = " ".join(each.content for each in every if each.visible)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", made)).split())


def question(form, unit="in"):
    (found,) = identify(heard(asked_of(typed(form), unit)).measured).questions
    return found


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("27", ("27", None)), ("27 tpi", ("27", None)), ("27 threads per inch", ("27", None)),
        ("26 to 28", ("26 to 28", None)), ("27 /in", ("27", None)),
        ("1.5 mm", (None, "1.5 mm")), ("1/27 in", (None, "1/27 in")),
    ],
)  # fmt: skip
def test_threads_are_counted_or_their_pitch_is_measured(text, asked):
    found = asked_of(typed({"threads": text}), "in")
    assert (found.threads, found.pitch) == asked
    assert not heard(found).faults


def test_a_bare_angle_is_in_degrees_and_a_bare_width_in_the_unit_of_the_page():
    male, female = (asked_of(typed({"where": each, "wide": "9.9", "seat": "37"}), "mm") for each in Gender)
    assert (male.outside_diameter, male.inside_diameter) == ("9.9", None)
    assert (female.outside_diameter, female.inside_diameter) == (None, "9.9")
    assert not heard(male).faults
    assert heard(male).measured.outside_diameter.middle == pytest.approx(0.0099)


@pytest.mark.parametrize(
    ("form", "spelled"),
    [
        ({"wide": "0.400", "threads": "27"}, ["1/8 NPT male"]),
        ({"where": "female", "wide": "8.95 mm", "threads": "1 mm"}, ["M10 x 1 female"]),
        ({"wide": "0.433", "threads": "20", "seat": "45"}, ["-4 flare 45 male"]),
        ({"wide": "0.558", "threads": "18", "taper": "no", "seat": "37"}, ["-6 flare 37 male"]),
        (
            {"wide": "0.558", "threads": "18", "taper": "no"},
            ["-6 flare 37 male", "-6 boss male"],
        ),  # what seals was not seen
        ({"wide": "0.400"}, []),  # M10 is as wide
        ({"threads": "14"}, []),  # one thread, by one figure
        ({"wide": "9.6 mm", "threads": "28"}, []),  # British: no fitting is known for it
    ],
)
def test_how_the_file_has_it_is_said_when_it_is_decided(form, spelled):
    assert [each.words for each in spelled_as(question(form), typed(form).gender)] == spelled


@pytest.mark.asyncio
async def test_the_page_says_what_the_command_says(tmp_path):
    async with user_simulation(root=None) as user:
        app._pages(Shelf(tmp_path), None)
        await user.open(addresses.THREAD)
        assert "Begin with two figures" in shown(user)
        await user.open(f"{addresses.THREAD}?wide=9.9+mm")
        asked = Asked(outside_diameter="9.9 mm")
        sheet = identify_sheet(identify(heard(asked).measured), display_of_asked(asked))
        seen = shown(user)
        told = [each.text for each in sheet.blocks if isinstance(each, Paragraph)]
        told += [
            cell for each in sheet.blocks if isinstance(each, Table) for row in each.rows for cell in row
        ]
        assert len(told) > 20
        assert [each for each in told if each not in seen] == []
        first = next(each.text for each in sheet.blocks if each.tone is Tone.LEAD)
        assert first.startswith("4 threads fit")
        assert seen.index("What tells them apart") < seen.index("What fits") < seen.index("figures come from")
        assert "calls it" not in seen
        await user.open(f"{addresses.THREAD}?wide=10&threads=1.25&seat=74")
        seen = shown(user)
        for slip in ("10 is far wider", "say 1.25 mm", "half of 74"):
            assert slip in seen


@pytest.mark.asyncio
async def test_what_was_found_is_written_at_its_place_and_undone(tmp_path):
    (tmp_path / "mine.yaml").write_text(TEXT, encoding="utf-8")
    shelf = Shelf(tmp_path)
    async with user_simulation(root=None) as user:
        app._pages(shelf, None)
        document = shelf.document("mine.yaml")
        at = addresses.thread("mine.yaml", None, INLET)

        # with too few turns something is wrong with the port, whatever its thread is
        await user.open(f"{at}&{FOUND}&turns=1")
        await user.should_see("under-tapped or another thread", retries=300)
        assert "Write 1/8 NPT female" not in shown(user)

        await user.open(f"{at}&{FOUND}")
        assert "The file supposes 1/8 NPT female there" in shown(user)
        user.find("Write 1/8 NPT female at left_caliper inlet").click()
        await user.should_see("is in the file. Undo takes it out.", retries=300)
        lines = zip(TEXT.splitlines(), document.text.splitlines(), strict=True)
        changed = [(before.strip(), after.strip()) for before, after in lines if before != after]
        assert [(one.partition(":")[0], two.partition("#")[0].strip()) for one, two in changed] == [
            ("thread", "thread: 1/8 NPT female")
        ]
        await user.should_see("That is what the file has there.", retries=300)
        document.undo()
        assert document.text == TEXT

        # another thread than the file has by now is told, and not written over it
        document.change(OUTLET, "1/4 NPT female")
        await user.open(f"{addresses.thread('mine.yaml', None, OUTLET)}&{FOUND}")
        assert "The file has 1/4 NPT female there, which is another thread." in shown(user)


def test_a_phone_may_ask_it_too_and_holds_no_list_against_ours():
    read = app._read_from_a_phone()
    assert addresses.thread("mine.yaml").rpartition("/")[2] in read
    assert addresses.held("mine.yaml").rpartition("/")[2] not in read


def test_the_caution_about_supposed_threads_leads_to_the_question():
    made = sheets_html(buy.sheets, TEXT, "mine.yaml", None, None)
    (way,) = re.findall(rf'{re.escape(LOOK)} <a class="[^"]+" href="([^"]+)">{re.escape(WHICH)}</a>', made)
    assert way == addresses.thread("mine.yaml")
    settled = TEXT.replace("{value: 1/8 NPT female, mark: assumed}", "1/8 NPT female")
    assert WHICH not in sheets_html(buy.sheets, settled, "mine.yaml", None, None)
