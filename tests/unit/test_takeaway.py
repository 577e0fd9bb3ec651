"""What is taken away: text for a forum, archives, and how each is handed over. Read by other libraries."""

from __future__ import annotations

import asyncio
import csv
import io
import zipfile

import ezdxf
import httpx
import pytest
from evaluated import awkward, example
from pypdf import PdfReader
from starlette.applications import Starlette

from firmpedal.export.archive import LEFT_OUT, archive
from firmpedal.export.formats import FORMATS
from firmpedal.export.step import available
from firmpedal.export.text import parts_text
from firmpedal.report.buying_data import order_csv
from firmpedal.report.cover import verdict_line
from firmpedal.web import addresses, routes
from firmpedal.web.papers import MAKERS, Made
from firmpedal.web.routes import Routes
from firmpedal.web.shelf import Shelf
from firmpedal.web.takeaway import LONG, shelves
from firmpedal.web.works import Works
from texts import edited
from texts import example as text_of


class Client:
    """Asks the routes as a browser does, without a server between."""

    def __init__(self, app):
        self.way = httpx.ASGITransport(app)

    def get(self, address):
        return asyncio.run(self._get(address))

    async def _get(self, address):
        async with httpx.AsyncClient(transport=self.way, base_url="http" + "://localhost") as asking:
            return await asking.get(address, timeout=None)


@pytest.fixture
def client(tmp_path):
    """The routes, over a folder with a file that can be read and one that cannot."""
    text = text_of("brindlewick")
    (tmp_path / "mine.yaml").write_text(text, encoding="utf-8")
    broken = edited(text, ("gear: tailwheel", "gear: tailwhel"))
    (tmp_path / "broken.yaml").write_text(broken, encoding="utf-8")
    works = Works()
    yield Client(Starlette(routes=Routes(Shelf(tmp_path), works).all()))
    works.stop_all()


@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
def test_everything_to_order_is_in_the_text_a_line_each(option):
    evaluation = example(option)
    lines = parts_text(evaluation).splitlines()
    assert lines[1] == verdict_line(evaluation)
    for row in csv.DictReader(io.StringIO(order_csv(evaluation))):
        found = [line for line in lines if f"; {row['designation']}; " in line and row["where"] in line]
        (line,) = [line for line in found if line.removeprefix("- ").split()[0].strip(";") == row["order"]]
        if row["spares"] != "0":
            assert f"({row['quantity']} + {row['spares']}" in line


def test_the_text_is_plain():
    for evaluation in (example("rigid"), awkward()):
        text = parts_text(evaluation)
        assert text == parts_text(evaluation)
        assert "  " not in text
        assert "; ;" not in text
        assert text.endswith("\n")
        assert not text.endswith("\n\n")


@pytest.mark.parametrize("to", ["dxf", "csv", "svg"])
def test_an_archive_holds_what_the_command_line_writes(to, tmp_path):
    evaluation = example("rigid")
    written = FORMATS[to](evaluation, tmp_path, "plane").paths
    found = archive(evaluation, to)
    with zipfile.ZipFile(io.BytesIO(found.data)) as packed:
        assert packed.testzip() is None
        files = {name: packed.read(name) for name in packed.namelist()}
    assert set(files) == {path.name for path in written}
    assert set(found.names) == set(files)
    if to == "dxf":  # it carries the time of writing
        for data in files.values():
            assert ezdxf.read(io.StringIO(data.decode())).modelspace()
        return
    assert files == {path.name: path.read_bytes() for path in written}
    assert archive(evaluation, to).data == found.data


@pytest.mark.skipif(not available(), reason="the CAD library is not installed")
def test_what_is_left_out_goes_along_with_the_solids():
    found = archive(example(), "step")
    assert found.names == ("lines.step",)
    assert any("left_cylinder.outlet" in words for words in found.left_out)
    with zipfile.ZipFile(io.BytesIO(found.data)) as packed:
        assert packed.read("lines.step").startswith(b"ISO-10303-21;")
        assert packed.read(LEFT_OUT).decode().splitlines() == list(found.left_out)


def test_every_format_is_on_the_page():
    assert {name for name, _ in shelves.FORMATS} | {"step"} == set(FORMATS)
    assert {f"{name}.zip" for name in FORMATS} | LONG <= set(MAKERS)


@pytest.mark.parametrize(
    ("name", "media", "begins"),
    [
        ("form.pdf", "application/pdf", b"%PDF-"),
        ("cards.pdf", "application/pdf", b"%PDF-"),
        ("fullsize-A4.pdf", "application/pdf", b"%PDF-"),
        ("parts.csv", "text/csv; charset=utf-8", b"quantity,"),
        ("parts.txt", "text/plain; charset=utf-8", b"Brindlewick, option rigid"),
        ("hangar.html", "text/html; charset=utf-8", b"<!doctype html>"),
        ("csv.zip", "application/zip", b"PK"),
        ("dxf.zip", "application/zip", b"PK"),
        ("svg.zip", "application/zip", b"PK"),
    ],
)
def test_each_is_handed_over_as_what_it_is(client, name, media, begins):
    address = addresses.export if name.endswith("zip") else addresses.paper
    answer = client.get(address("mine.yaml", name, "rigid"))
    assert (answer.status_code, answer.headers["content-type"]) == (200, media)
    assert answer.content.startswith(begins)
    kept = name.endswith(("csv", "html", "zip"))
    how = "attachment" if kept else "inline"
    assert answer.headers["content-disposition"] == f'{how}; filename="mine_rigid_{name}"'


def test_what_is_kept_carries_the_option_and_nothing_that_a_disk_refuses(client):
    plain = client.get(addresses.paper("mine.yaml", "parts.csv"))
    assert plain.headers["content-disposition"] == 'attachment; filename="mine_parts.csv"'
    odd = routes._sent("parts.csv", "my own.yaml", "a/b 'c'", Made(b""))
    assert odd.headers["content-disposition"] == 'attachment; filename="my_own_a_b_c__parts.csv"'


def test_a_packet_has_a_picture_for_each_page_once_it_is_made(client):
    def picture(number):
        return client.get(addresses.picture("mine.yaml", "packet.pdf", number, "rigid", 1))

    assert picture(1).status_code == 404
    paper = client.get(addresses.paper("mine.yaml", "packet.pdf", "rigid"))
    assert paper.headers["content-type"] == "application/pdf"
    first = picture(1)
    assert (first.status_code, first.headers["content-type"]) == (200, "image/svg+xml")
    assert first.text.startswith("<svg")
    assert picture(0).status_code == 404
    count = len(PdfReader(io.BytesIO(paper.content)).pages)
    assert picture(count).status_code == 200
    assert picture(count + 1).status_code == 404
    assert client.get(addresses.picture("mine.yaml", "packet.pdf", 1, None, 1)).status_code == 404


@pytest.mark.parametrize(
    ("path", "status"),
    [
        ("/paper/other.yaml/form.pdf", 404),
        ("/paper/mine.yaml/nothing.pdf", 404),
        ("/paper/mine.yaml/nothing", 404),
        ("/paper/mine.yaml/dxf.zip", 404),
        ("/export/mine.yaml/packet.pdf", 404),
        ("/export/mine.yaml/dxf.zip", 409),
        ("/export/broken.yaml/csv.zip", 409),
        ("/paper/broken.yaml/packet.pdf", 409),
        ("/paper/mine.yaml/parts.csv?option=nothing", 409),
    ],
)
def test_what_cannot_be_had_is_said(client, path, status):
    answer = client.get(path)
    assert answer.status_code == status
    assert answer.headers["content-type"].startswith("text/plain")
