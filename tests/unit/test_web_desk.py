"""The builder's file as it lies open: saved at once, and two versions never become one in silence."""

from __future__ import annotations

import os
import stat

import pytest
from clock_by_hand import Clock

from firmpedal.project import save as disk
from firmpedal.project.edit import EditError
from firmpedal.web.desk import OUTSIDE, TYPING_PAUSE, Document
from firmpedal.web.read_only import ReadOnly
from texts import example

TEXT = example("brindlewick")
LOADS = "foot: {normal: 75, hard: 150, panic: 200}"


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def path(tmp_path):
    made = tmp_path / "mine.yaml"
    made.write_text(TEXT, encoding="utf-8")
    return made


@pytest.fixture
def document(path, clock):
    return Document(path, clock)


def said_on_disk(path):
    return path.read_bytes().decode("utf-8")


def test_a_change_touches_its_own_value_and_is_saved(document, path):
    document.change("foot.panic", "210")
    assert LOADS in TEXT
    assert said_on_disk(path) == TEXT.replace(LOADS, LOADS.replace("200", "210"))


def test_a_change_that_cannot_be_made_changes_nothing(document, path):
    with pytest.raises(EditError):
        document.change("foot.panik", "210")
    assert said_on_disk(path) == TEXT
    assert not document.undoes


def test_undo_and_redo_go_back_and_forth_on_the_disk_too(document, path):
    document.change("foot.panic", "210")
    document.change("foot.hard", "160")
    assert document.undoes == "foot.hard: 160"
    document.undo()
    assert "hard: 150, panic: 210" in said_on_disk(path)
    document.undo()
    assert said_on_disk(path) == TEXT
    document.undo()  # there is nothing left
    assert (document.undoes, document.redoes) == ("", "foot.panic: 210")
    document.redo()
    document.redo()
    assert "hard: 160, panic: 210" in said_on_disk(path)
    assert document.redoes == ""


def test_another_change_gives_up_what_was_undone(document):
    document.change("foot.panic", "210")
    document.undo()
    document.change("foot.panic", "220")
    assert document.redoes == ""
    assert "panic: 220" in document.text


def test_quick_typing_is_one_step_to_undo(document, clock):
    for word, pause in (("a", 0), ("ab", TYPING_PAUSE), ("abc", TYPING_PAUSE + 0.1)):
        clock.now += pause
        document.replace_text(f"# {word}\n{TEXT}", document.text)
    document.undo()
    assert document.text == f"# ab\n{TEXT}"
    document.undo()
    assert document.text == TEXT


def test_what_another_program_wrote_is_never_overwritten(document, path):
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.change("foot.panic", "210")
    assert said_on_disk(path) == f"# theirs\n{TEXT}"
    assert document.conflict.theirs.text == f"# theirs\n{TEXT}"
    assert "panic: 210" in document.conflict.mine
    document.undo()  # nothing more is written before somebody has chosen
    document.change("foot.panic", "215")
    assert "panic: 215" in document.conflict.mine
    assert said_on_disk(path) == f"# theirs\n{TEXT}"


def test_keeping_mine_leaves_theirs_one_step_back(document, path):
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.change("foot.panic", "210")
    document.keep_mine()
    assert document.conflict is None
    assert said_on_disk(path) == TEXT.replace("panic: 200", "panic: 210")
    document.undo()
    assert said_on_disk(path) == f"# theirs\n{TEXT}"


def test_taking_theirs_leaves_mine_one_step_back(document, path):
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.change("foot.panic", "210")
    document.take_theirs()
    assert document.conflict is None
    assert document.text == f"# theirs\n{TEXT}"
    document.undo()
    assert said_on_disk(path) == TEXT.replace("panic: 200", "panic: 210")


def test_what_is_chosen_of_both_is_saved_and_both_stay_a_step_back(document, path):
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.change("foot.panic", "210")
    seen = document.conflict
    both = f"# theirs\n{seen.mine}"
    document.settle(seen, both, "put together")
    assert document.conflict is None
    assert said_on_disk(path) == both
    document.undo()
    assert said_on_disk(path) == f"# theirs\n{TEXT}"
    document.undo()
    assert said_on_disk(path) == seen.mine


def test_a_choice_for_a_conflict_that_is_another_by_now_does_nothing(document, path):
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.change("foot.panic", "210")
    seen = document.conflict
    document.change("foot.panic", "215")
    document.settle(seen, "lost: yes\n", "put together")
    assert document.conflict is not None
    assert said_on_disk(path) == f"# theirs\n{TEXT}"


def test_with_all_saved_the_text_of_another_program_is_taken_at_once(document, path):
    told = []
    end = document.listen(lambda: told.append(document.text))
    document.look()
    assert not told
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.look()
    assert told == [f"# theirs\n{TEXT}"]
    assert document.undoes == OUTSIDE
    end()
    document.undo()
    assert len(told) == 1
    assert said_on_disk(path) == TEXT


def test_typing_on_a_text_that_changed_meanwhile_keeps_both(document, path):
    before = document.text
    document.change("foot.panic", "210")  # in another window
    changed = document.text
    document.replace_text(f"# typed\n{before}", before)
    assert document.conflict.mine == f"# typed\n{before}"
    assert document.conflict.theirs.text == changed == said_on_disk(path)
    document.keep_mine()
    assert said_on_disk(path) == f"# typed\n{before}"
    document.undo()
    assert said_on_disk(path) == changed


def test_a_file_that_is_gone_is_said_and_can_be_written_again(document, path):
    path.unlink()
    document.look()
    assert document.gone
    assert document.conflict is None  # nothing here was not saved
    assert (document.text, document.undoes) == ("", "")
    document.undo()
    document.rewrite("a: 1\n", "by the form")
    assert not path.exists()
    document.restore()
    assert said_on_disk(path) == document.text == TEXT
    document.change("foot.panic", "210")
    assert "panic: 210" in said_on_disk(path)


def test_a_file_that_came_back_meanwhile_is_not_written_over(document, path):
    path.unlink()
    document.look()
    path.write_text("# theirs\n", encoding="utf-8")
    document.restore()
    assert said_on_disk(path) == "# theirs\n"


def test_whatever_becomes_of_the_file_the_page_goes_with_it(document, path):
    """Nothing was changed here, so there is nothing to choose: broken, empty, gone, and whole again."""
    document.change("foot.panic", "210")
    good = document.text
    for data in (b"\xff\xfea\x00", b"", None, b"\x00\x01", None, b"name: M\xfcller\n"):
        path.write_bytes(data) if data is not None else path.unlink()
        document.look()
        assert document.conflict is None
        assert bool(document.problems) is (data != b"")
        assert document.gone is (data is None)
    path.write_text(good, encoding="utf-8")
    document.look()
    assert not document.problems
    assert document.text == good
    document.undo()  # the empty text, which could be read
    assert said_on_disk(path) == ""
    document.undo()
    document.undo()
    assert said_on_disk(path) == TEXT


def test_of_two_versions_the_other_one_is_that_which_is_there_now(document, path):
    path.write_bytes(b"\xff\xfea\x00")
    document.change("foot.panic", "210")
    assert document.conflict.theirs.problems
    path.unlink()
    document.look()
    assert document.conflict.gone
    path.write_text(f"# theirs\n{TEXT}", encoding="utf-8")
    document.look()
    assert document.conflict.theirs.text == f"# theirs\n{TEXT}"
    document.take_theirs()
    assert document.text == said_on_disk(path) == f"# theirs\n{TEXT}"


def test_a_broken_text_is_saved_as_it_is_typed(document, path):
    document.replace_text("firmpedal: [1\n", document.text)
    assert said_on_disk(path) == "firmpedal: [1\n"


@pytest.mark.parametrize("data", [b"\xff\xfea\x00", b"name: M\xfcller\n", b"\x00\x01\x02"])
def test_a_file_that_is_no_text_is_left_alone(tmp_path, data):
    path = tmp_path / "odd.yaml"
    path.write_bytes(data)
    document = Document(path)
    assert document.problems
    document.replace_text("firmpedal: 1\n", document.text)
    document.look()
    assert document.conflict is None
    assert path.read_bytes() == data
    path.write_text(TEXT, encoding="utf-8")  # somebody saves it anew
    document.look()
    assert not document.problems
    assert document.text == TEXT
    document.undo()  # there was no text before it
    assert path.read_text(encoding="utf-8") == TEXT


def test_newlines_and_mark_of_a_file_stay(tmp_path):
    path = tmp_path / "windows.yaml"
    data = b"\xef\xbb\xbf" + TEXT.replace("\n", "\r\n").encode()
    path.write_bytes(data)
    document = Document(path)
    assert "\r" not in document.text
    document.change("foot.panic", "210")
    assert path.read_bytes() == data.replace(b"panic: 200", b"panic: 210")
    document.replace_text(f"# one\n# two\n{document.text}", document.text)
    expected = b"\xef\xbb\xbf# one\r\n# two\r\n" + data[3:].replace(b"panic: 200", b"panic: 210")
    assert path.read_bytes() == expected


def test_each_line_keeps_its_own_end(tmp_path):
    path = tmp_path / "mixed.yaml"
    path.write_bytes(b"a: 1\r\nb: 2\nc: 3\r\nd: 4\re: 5")
    document = Document(path)
    document.replace_text("a: 1\nnew: 0\nb: 2\nc: 3\nd: 4\ne: 6\n", document.text)
    assert path.read_bytes() == b"a: 1\r\nnew: 0\r\nb: 2\nc: 3\r\nd: 4\re: 6\r\n"


@pytest.mark.skipif(os.name == "nt", reason="rights are told otherwise there")
def test_rights_and_links_stay_and_nothing_is_left_beside(path, tmp_path):
    path.chmod(0o640)
    way = tmp_path / "way.yaml"
    way.symlink_to(path)
    document = Document(way)
    document.change("foot.panic", "210")
    assert way.is_symlink()
    assert "panic: 210" in said_on_disk(path)
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert sorted(item.name for item in tmp_path.iterdir()) == ["mine.yaml", "way.yaml"]


def test_a_disk_that_refuses_is_said_and_nothing_is_lost(document, path, monkeypatch, tmp_path):
    def full(_handle):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(disk.os, "fsync", full)
        document.change("foot.panic", "210")
        assert document.trouble == "No space left on device"
    assert said_on_disk(path) == TEXT
    assert [item.name for item in tmp_path.iterdir()] == ["mine.yaml"]
    assert "panic: 210" in document.text
    document.look()  # the file on the disk is older, and not from elsewhere
    document.change("foot.hard", "160")
    assert document.trouble == ""
    assert "hard: 160, panic: 210" in said_on_disk(path)


def test_a_writer_that_dies_leaves_the_old_file_whole(document, path, monkeypatch):
    """Until the exchange of names the old file is not touched at all."""

    def dies(_self, _target):
        raise KeyboardInterrupt

    monkeypatch.setattr(disk.Path, "replace", dies)
    with pytest.raises(KeyboardInterrupt):
        document.change("foot.panic", "210")
    assert said_on_disk(path) == TEXT


def test_a_phone_sees_every_change_and_makes_none(document, path):
    heard = []
    phone = ReadOnly(document)
    end = phone.listen(lambda: heard.append(phone.text))
    document.change("foot.panic", "210")
    assert heard == [document.text]
    phone.change("foot.panic", "220")
    phone.replace_text("a: 1\n", document.text)
    phone.replace_text("a: 1\n", "something else")
    phone.rewrite("a: 1\n", "by the phone")
    phone.undo()
    assert phone.text == document.text == said_on_disk(path)
    assert "panic: 210" in document.text
    assert document.conflict is None
    path.write_text(TEXT, encoding="utf-8")
    document.change("foot.panic", "230")
    assert phone.conflict is document.conflict is not None
    phone.rewrite("a: 1\n", "by the phone")
    assert "panic: 230" in document.conflict.mine
    phone.keep_mine()
    phone.take_theirs()
    assert document.conflict is not None
    assert said_on_disk(path) == TEXT
    end()
    document.take_theirs()
    phone.redo()
    assert said_on_disk(path) == TEXT
