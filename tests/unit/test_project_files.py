"""Files that are not what a builder wrote: refused at once, kindly, without being read."""

from __future__ import annotations

import os
import time

import pytest
from project_texts import SOUND

from firmpedal.project import read_file, read_text


def refused(path, message, suggestion=""):
    reading = read_file(path)
    assert reading.aircraft is None
    (problem,) = reading.problems
    assert message in problem.message
    assert suggestion in problem.suggestion
    assert (problem.span.file, problem.span.line, problem.span.column) == (str(path), 1, 1)


def test_sound_file_is_read(tmp_path):
    path = tmp_path / "sound.yaml"
    path.write_text(SOUND, encoding="utf-8")
    assert read_file(path).problems == ()


@pytest.mark.parametrize(
    "data",
    [
        SOUND.encode("utf-8-sig"),
        SOUND.replace("\n", "\r\n").encode(),
        SOUND.replace("Test Bed", "T\u00e9st B\u00f6d \u2708").encode(),
    ],
    ids=["byte order mark", "line ends of two characters", "letters of other scripts"],
)
def test_ways_in_which_editors_write_are_read(tmp_path, data):
    path = tmp_path / "sound.yaml"
    path.write_bytes(data)
    assert read_file(path).problems == ()


@pytest.mark.parametrize("data", [bytes(range(256)), b"\x7fELF\x00\x00"], ids=["every byte", "a program"])
def test_what_is_not_text_is_refused(tmp_path, data):
    path = tmp_path / "photo.yaml"
    path.write_bytes(data)
    refused(path, "not a text file")


def test_text_in_two_bytes_a_letter_is_told_by_its_name(tmp_path):
    path = tmp_path / "wide.yaml"
    path.write_bytes(SOUND.encode("utf-16"))
    refused(path, "this file is written in UTF-16", "UTF-8")


def test_letter_of_an_old_encoding_is_shown_where_it_stands(tmp_path):
    path = tmp_path / "old.yaml"
    path.write_bytes(SOUND.replace("Test Bed", "T\u00e9st Bed").encode("latin-1"))
    (problem,) = read_file(path).problems
    assert (problem.span.line, problem.span.column) == (2, 19)
    assert "not written in UTF-8" in problem.message
    assert "save it again" in problem.suggestion


def test_stray_control_character_is_shown_where_it_stands(tmp_path):
    path = tmp_path / "stray.yaml"
    path.write_bytes(SOUND.replace("Test Bed", "Test\x0bBed").encode())
    (problem,) = read_file(path).problems
    assert (problem.span.line, problem.span.column) == (2, 22)
    assert "cannot be seen" in problem.message


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="root may read everything")
def test_file_that_may_not_be_read(tmp_path):
    path = tmp_path / "locked.yaml"
    path.write_text(SOUND, encoding="utf-8")
    path.chmod(0)
    refused(path, "may not be read", "right to read it")


def test_reader_that_is_refused_by_the_system_says_so(tmp_path, monkeypatch):
    path = tmp_path / "locked.yaml"
    path.write_text(SOUND, encoding="utf-8")

    def no(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(type(path), "open", no)
    refused(path, "may not be read", "right to read it")


def test_text_that_is_pasted_is_refused_by_its_size_too():
    (problem,) = read_text("a: 1\n" * 100_000).problems
    assert "500,000 bytes" in problem.message


def test_huge_file_is_refused_by_its_size_without_being_read(tmp_path):
    path = tmp_path / "huge.yaml"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    start = time.perf_counter()
    refused(path, "50,000,000 bytes")
    assert time.perf_counter() - start < 1


def test_folder_is_refused(tmp_path):
    refused(tmp_path, "this is a folder")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_pipe_is_refused_instead_of_waited_for(tmp_path):
    path = tmp_path / "pipe.yaml"
    os.mkfifo(path)
    refused(path, "not an ordinary file")


def test_missing_file_names_the_near_miss(tmp_path):
    (tmp_path / "tailwheel.yaml").write_text(SOUND, encoding="utf-8")
    refused(tmp_path / "tailweel.yaml", "there is no such file", "tailwheel.yaml")
    refused(tmp_path / "nowhere" / "tailwheel.yaml", "there is no such file")


def test_name_that_no_file_can_have_is_refused(tmp_path):
    refused(tmp_path / "a\0b.yaml", "not the name of a file")
    refused(tmp_path / ("long" * 100), "cannot be read")
