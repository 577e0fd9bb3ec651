"""The folder that the app was opened on: only its own files, and nothing in it is overwritten."""

from __future__ import annotations

import pytest

from firmpedal.project.examples import examples, story
from firmpedal.web.shelf import NameRefusedError, Shelf


@pytest.fixture
def shelf(tmp_path):
    (tmp_path / "inner").mkdir()
    (tmp_path / "inner" / "other.yaml").write_text("firmpedal: 1\n", encoding="utf-8")
    (tmp_path / "mine.yaml").write_text("firmpedal: 1\n", encoding="utf-8")
    (tmp_path / ".hidden.yaml").write_text("firmpedal: 1\n", encoding="utf-8")
    (tmp_path / "words.txt").write_text("firmpedal: 1\n", encoding="utf-8")
    (tmp_path / "folder.yaml").mkdir()
    return Shelf(tmp_path)


def test_it_lists_the_files_of_the_folder_itself(shelf):
    assert shelf.names() == ["mine.yaml"]


@pytest.mark.parametrize(
    "name", ["inner/other.yaml", "../mine.yaml", "words.txt", ".hidden.yaml", "folder.yaml", "none.yaml", ""]
)
def test_no_other_file_is_opened(shelf, name):
    assert shelf.document(name) is None


def test_a_file_lies_open_once(shelf):
    assert shelf.document("mine.yaml") is shelf.document("mine.yaml")


def test_an_example_is_copied_under_a_name_that_is_free(shelf):
    names = [shelf.begin_example("oatmere") for _ in range(3)]
    assert names == ["oatmere.yaml", "oatmere_2.yaml", "oatmere_3.yaml"]
    assert shelf.document(names[2]).text == examples()["oatmere"].read_text(encoding="utf-8")


def test_what_is_there_is_not_overwritten(shelf):
    with pytest.raises(NameRefusedError, match="is there already"):
        shelf.begin("mine", "other")
    assert shelf.document("mine.yaml").text == "firmpedal: 1\n"


@pytest.mark.parametrize("name", ["", "  ", ".x", "../x", "a/b", "a\\b", "-x", "a\0b", "a:b"])
def test_a_name_that_leads_elsewhere_is_refused(shelf, name):
    before = sorted(shelf.folder.rglob("*"))
    with pytest.raises(NameRefusedError):
        shelf.begin(name, "firmpedal: 1\n")
    assert sorted(shelf.folder.rglob("*")) == before


def test_a_name_gets_its_ending(shelf):
    assert shelf.begin("my  plane", "firmpedal: 1\n") == "my plane.yaml"
    assert shelf.begin("other.YML", "firmpedal: 1\n") == "other.YML"
    assert shelf.names() == ["mine.yaml", "my plane.yaml", "other.YML"]


def test_every_example_tells_what_it_is():
    for name, path in examples().items():
        assert story(path).startswith(name.capitalize())
        assert "#" not in story(path)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("", "Give it a name"),
        ("Ann's heron", "cannot have ' (apostrophe) in it"),
        ("a/b", "cannot have a slash (/) in it"),
        ("a\0b", "cannot have a sign that is not shown in it"),
        (".x", "cannot begin with . (full stop)"),
        ("-x", "cannot begin with - (hyphen-minus)"),
    ],
)
def test_a_refusal_names_the_sign_that_is_the_trouble(shelf, name, said):
    with pytest.raises(NameRefusedError) as refused:
        shelf.begin(name, "firmpedal: 1\n")
    assert said in str(refused.value)
    assert "letters and figures" in str(refused.value)
