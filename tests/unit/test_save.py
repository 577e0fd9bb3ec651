"""A changed text goes back into the very file that was read, whole or not at all."""

from __future__ import annotations

import stat

import pytest

from firmpedal.project import save as module
from firmpedal.project.save import ChangedMeanwhileError, as_read


def save(path, before, after):
    """Put a text in the place of one that was read from a file, as a command does."""
    module.save(path, after, as_read(path, before))


def test_bytes_rights_and_the_first_mark_stay(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_bytes(b"\xef\xbb\xbfa: 1\r\nb: \xc3\xa4\r\n")
    path.chmod(0o640)
    save(path, "a: 1\r\nb: ä\r\n", "a: 2\r\nb: ä\r\n")
    assert path.read_bytes() == b"\xef\xbb\xbfa: 2\r\nb: \xc3\xa4\r\n"
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert [each.name for each in tmp_path.iterdir()] == ["a.yaml"]


def test_a_file_that_changed_meanwhile_is_left_alone(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_text("a: 3\n", encoding="utf-8")
    with pytest.raises(ChangedMeanwhileError):
        save(path, "a: 1\n", "a: 2\n")
    assert path.read_text(encoding="utf-8") == "a: 3\n"


def test_a_link_stays_a_link(tmp_path):
    real, link = tmp_path / "real.yaml", tmp_path / "link.yaml"
    real.write_text("a: 1\n", encoding="utf-8")
    link.symlink_to(real)
    save(link, "a: 1\n", "a: 2\n")
    assert link.is_symlink()
    assert real.read_text(encoding="utf-8") == "a: 2\n"


def test_what_fails_half_way_leaves_the_old_file_and_nothing_else(tmp_path, monkeypatch):
    path = tmp_path / "a.yaml"
    path.write_text("a: 1\n", encoding="utf-8")

    def full(*_):
        raise OSError(28, "no room")

    monkeypatch.setattr(module.os, "fsync", full)
    with pytest.raises(OSError, match="no room"):
        save(path, "a: 1\n", "a: 2\n")
    assert path.read_text(encoding="utf-8") == "a: 1\n"
    assert [each.name for each in tmp_path.iterdir()] == ["a.yaml"]


def test_lines_keep_their_own_ends_and_new_ones_take_the_usual(tmp_path):
    path = tmp_path / "a.yaml"
    path.write_bytes(b"a: 1\r\nb: 2\nc: 3\r\n")
    save(path, "a: 1\r\nb: 2\nc: 3\r\n", "a: 1\r\nb: 4\nnew: 0\nc: 3\r\n")
    assert path.read_bytes() == b"a: 1\r\nb: 4\r\nnew: 0\r\nc: 3\r\n"


def test_what_is_written_is_on_the_disk_before_the_names_are_exchanged(tmp_path, monkeypatch):
    """A machine that stops in between finds the old file or the new one, never an empty one."""
    path = tmp_path / "a.yaml"
    path.write_text("a: 1\n", encoding="utf-8")
    done = []
    settled, exchanged = module.os.fsync, module.Path.replace
    monkeypatch.setattr(module.os, "fsync", lambda handle: (done.append("settled"), settled(handle)))
    monkeypatch.setattr(module.Path, "replace", lambda *both: (done.append("exchanged"), exchanged(*both)))
    save(path, "a: 1\n", "a: 2\n")
    assert done[:2] == ["settled", "exchanged"]
    assert path.read_text(encoding="utf-8") == "a: 2\n"


def test_a_file_that_is_gone_is_not_made_anew(tmp_path):
    path = tmp_path / "a.yaml"
    with pytest.raises(ChangedMeanwhileError):
        save(path, "a: 1\n", "a: 2\n")
    assert not path.exists()
