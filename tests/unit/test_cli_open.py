"""`firmpedal open`: what it refuses before anything is started, and which port it takes."""

from __future__ import annotations

import socket

import pytest

from firmpedal.cli.open import USUAL_PORT, free_port, run
from firmpedal.web import serving


@pytest.fixture
def started(monkeypatch):
    """What the server would be started with."""
    calls = []
    monkeypatch.setattr(serving, "serve", lambda *given, **named: calls.append((*given, named)))
    return calls


@pytest.fixture
def taken():
    with socket.socket() as held:
        held.bind(("127.0.0.1", 0))
        held.listen()
        yield held.getsockname()[1]


def test_a_folder_opens_on_the_first_page(tmp_path, started):
    assert run(tmp_path, None, browser=False) == 0
    ((shelf, _, page, _, named),) = started
    assert (shelf.folder, page, named) == (tmp_path.resolve(), "/", {"browser": False, "lan": None})


def test_a_file_opens_on_its_own_page(tmp_path, started):
    (tmp_path / "my plane.yaml").write_text("firmpedal: 1\n", encoding="utf-8")
    assert run(tmp_path / "my plane.yaml", None, browser=True) == 0
    ((shelf, _, page, _, named),) = started
    assert shelf.folder == tmp_path.resolve()
    assert page == "/aircraft/my%20plane.yaml/sound"
    assert named == {"browser": True, "lan": None}


def test_for_a_phone_the_address_and_a_code_are_told_and_a_code_only_then(tmp_path, started, capsys):
    assert run(tmp_path, None, browser=False, lan=True) == 0
    ((_, port, _, told, named),) = started
    assert "Code" not in capsys.readouterr().out
    told(f"address of port {port}")
    said = " ".join(capsys.readouterr().out.split())
    assert f"Code for the phone: {named['lan'].pairing.code}," in said
    assert "not encrypted" in said
    assert "this machine alone" not in said


@pytest.mark.parametrize(("name", "words"), [("none.yaml", "There is no"), ("words.txt", "end in .yaml")])
def test_what_cannot_be_opened_is_said(tmp_path, started, capsys, name, words):
    (tmp_path / "words.txt").write_text("words", encoding="utf-8")
    assert run(tmp_path / name, None, browser=False) == 2
    assert words in " ".join(capsys.readouterr().err.split())
    assert not started


def test_a_port_that_is_taken_is_said(tmp_path, started, capsys, taken):
    assert run(tmp_path, taken, browser=False) == 2
    assert f"Port {taken} is taken" in capsys.readouterr().err
    assert not started


def test_where_the_usual_port_is_taken_another_is_found():
    with socket.socket() as held:
        held.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            held.bind(("127.0.0.1", USUAL_PORT))
            held.listen()
        except OSError:
            pass  # somebody else has it, which is the same
        found = free_port()
    assert found != USUAL_PORT
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", found))
