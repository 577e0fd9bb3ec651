"""Every key of the builder's file stands on its page, and every whole file on a page can be read."""

import re
import typing

import pytest
from page_blocks import PAGES, ROOT, blocks, joined

from firmpedal.model.aircraft import Aircraft
from firmpedal.model.fields import Declared
from firmpedal.model.kinds import KINDS
from firmpedal.project import read_text
from firmpedal.project.schema import known_keys

PAGE = (ROOT / "docs" / "file.md").read_text(encoding="utf-8")


def declared_in(annotation):
    """Every class of the model that a field's annotation names, however deep."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        yield annotation
    for inner in typing.get_args(annotation):
        yield from declared_in(inner)


def every_class(cls, seen):
    if cls not in seen:
        seen.add(cls)
        for name, info in cls.model_fields.items():
            del name
            for inner in declared_in(info.annotation):
                every_class(inner, seen)
    return seen


CLASSES = sorted(every_class(Aircraft, set()), key=lambda cls: cls.__name__)


def test_classes_are_found_through_lists_and_unions():
    assert set(KINDS.values()) <= set(CLASSES)
    assert len(CLASSES) > 20


@pytest.mark.parametrize("cls", CLASSES, ids=lambda cls: cls.__name__)
def test_every_key_is_on_the_page(cls):
    assert {key for key in known_keys(cls) if f"`{key}`" not in PAGE} == set()


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_on_the_page(kind):
    assert f"`{kind}`" in PAGE


def files_of(page):
    """Each builder's file as the page leaves it, and with each other way to write something in it."""
    kept, others = {}, []
    for block in blocks(page.read_text(encoding="utf-8")):
        if block.kind == "yaml" and block.file:
            if block.mode == "keep":
                kept[block.file] = joined(kept.get(block.file, ""), block.text)
            elif block.mode == "also":
                others.append((block.file, block))
    yield from kept.items()
    for name, block in others:
        yield f"{name}, line {block.line}", joined(kept[name], block.text)


FILES = [(page.stem, name, text) for page in PAGES for name, text in files_of(page)]


@pytest.mark.parametrize(("page", "name", "text"), FILES, ids=lambda part: part if len(part) < 40 else "text")
def test_file_on_a_page_can_be_read(page, name, text):
    reading = read_text(text, name)
    assert [f"{page} {each.span.line}: {each.message}" for each in reading.problems] == []
    for option in reading.options:
        assert read_text(text, name, option).problems == ()


def by_hand(page):
    """A page's text without what docs/build.py makes; that ran its files already."""
    return re.sub(r"<!-- generated: .*?<!-- end -->", "", page.read_text(encoding="utf-8"), flags=re.DOTALL)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_no_yaml_block_is_left_unread(page):
    assert [block.text for block in blocks(by_hand(page)) if block.kind == "yaml" and not block.file] == []
