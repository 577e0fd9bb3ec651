"""What a command may write over: the builder's own files stay as they are."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from evaluated import EXAMPLE

from commands import firmpedal

UNUSABLE = 2
WRITERS = {
    "cards": ("-o", "pdf"),
    "form": ("-o", "pdf"),
    "fullsize": ("-o", "pdf"),
    "hangar": ("-o", "html"),
    "packet": ("-o", "pdf"),
    "parts": ("--csv", "csv"),
}


@pytest.fixture
def own(tmp_path):
    return Path(shutil.copy(EXAMPLE, tmp_path / "mine.yaml"))


def run(*words):
    return firmpedal(*words)


def refuses(done, words):
    assert done.returncode == UNUSABLE
    assert words in done.stderr
    return True


@pytest.mark.parametrize("command", WRITERS)
def test_the_file_that_is_read_is_never_written_over(own, command):
    before = own.read_bytes()
    assert refuses(run(command, own, WRITERS[command][0], own), "would be lost")
    assert own.read_bytes() == before


def test_nor_by_another_way_to_it(own):
    (own.parent / "sub").mkdir()
    link = own.parent / "link.pdf"
    link.symlink_to(own)
    before = own.read_bytes()
    for way in (own.parent / "sub" / ".." / "mine.yaml", link):
        assert refuses(run("packet", own, "-o", way), "would be lost")
    assert own.read_bytes() == before


def test_nor_the_price_book(own):
    book = own.parent / "prices.csv"
    book.write_text("part,price\n", encoding="utf-8")
    assert refuses(run("parts", own, "--prices", book, "--csv", book), "would be lost")
    assert book.read_text(encoding="utf-8") == "part,price\n"


@pytest.mark.parametrize("command", WRITERS)
def test_no_name_like_an_aircrafts_file(own, command):
    other = own.with_name("other.YML")
    assert refuses(run(command, own, WRITERS[command][0], other), "ends like an aircraft's file")
    assert not other.exists()


def test_nor_what_is_no_file_of_its_kind(own):
    notes = own.with_name("notes.txt")
    notes.write_text("torque", encoding="utf-8")
    assert refuses(run("cards", own, "-o", notes), "does not end in .pdf")
    assert notes.read_text(encoding="utf-8") == "torque"


@pytest.mark.parametrize("command", WRITERS)
def test_a_folder_that_is_not_there_is_not_made(own, command):
    out, ending = WRITERS[command]
    folder = own.parent / "no_such"
    assert refuses(run(command, own, out, folder / f"x.{ending}"), "is not there")
    assert not folder.exists()


def test_export_makes_its_own_folder_and_no_more(own):
    words = ("export", own, "--option", "rigid", "--to", "csv", "-o")
    assert refuses(run(*words, own.parent / "no_such" / "tables"), "is not there")
    assert run(*words, own.parent / "tables").returncode == 0
    assert (own.parent / "tables" / "bends.csv").is_file()


def test_an_older_paper_is_written_again(own):
    paper = own.with_name("form.PDF")
    paper.write_bytes(b"old")
    assert run("form", own, "-o", paper).returncode == 0
    assert paper.read_bytes().startswith(b"%PDF")
