"""Files that are not what a builder wrote: refused at once, kindly, without being read."""

from __future__ import annotations

import os
import time

import pytest
from project_texts import SOUND

from firmpedal.project import read_file


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


@pytest.mark.parametrize(
    "data",
    [bytes(range(256)), b"\x7fELF\x00\x00", SOUND.encode("utf-16"), "a: \u00e9".encode("latin-1")],
    ids=["every byte", "a program", "another encoding", "an old encoding"],
)
def test_what_is_not_text_is_refused(tmp_path, data):
    path = tmp_path / "photo.yaml"
    path.write_bytes(data)
    refused(path, "not a text file")


def test_huge_file_is_refused_by_its_size_without_being_read(tmp_path):
    path = tmp_path / "huge.yaml"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    start = time.perf_counter()
    refused(path, "50,000,000 bytes")
    assert time.perf_counter() - start < 1


def test_folder_is_refused(tmp_path):
    refused(tmp_path, "it is a folder")


def test_pipe_is_refused_instead_of_waited_for(tmp_path):
    path = tmp_path / "pipe.yaml"
    os.mkfifo(path)
    refused(path, "not a file")


def test_missing_file_names_the_near_miss(tmp_path):
    (tmp_path / "tailwheel.yaml").write_text(SOUND, encoding="utf-8")
    refused(tmp_path / "tailweel.yaml", "there is no such file", "tailwheel.yaml")
    refused(tmp_path / "nowhere" / "tailwheel.yaml", "there is no such file")


def test_name_that_no_file_can_have_is_refused(tmp_path):
    refused(tmp_path / "a\0b.yaml", "cannot be read")
    refused(tmp_path / ("long" * 100), "cannot be read")
