"""Links between the pages lead somewhere, and what pages name exists."""

import re

import pytest
from page_blocks import PAGES, ROOT, blocks

LINK = re.compile(r"!?\[(?P<words>[^\]]+)\]\((?P<target>[^)\s]+)\)")
CODE = re.compile(r"```.*?```|`[^`\n]*`", re.DOTALL)
MAKE = re.compile(r"^`?make ([a-z]+)", re.MULTILINE)


def anchors(page):
    """The anchors that headings get where pages are shown: lower case, dashes for blanks, no other signs."""
    text = re.sub(r"```.*?```", "", page.read_text(encoding="utf-8"), flags=re.DOTALL)
    titles = re.findall(r"^#+ (.+)$", text, re.MULTILINE)
    return {re.sub(r"[^\w -]", "", title.lower()).strip().replace(" ", "-") for title in titles}


def links(page):
    text = re.sub(r"```.*?```", "", page.read_text(encoding="utf-8"), flags=re.DOTALL)
    return [found["target"] for found in LINK.finditer(text)]


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_links_lead_somewhere(page):
    broken = []
    for target in links(page):
        path, _, anchor = target.partition("#")
        file = (page.parent / path) if path else page
        if not file.exists() or (anchor and anchor not in anchors(file)):
            broken.append(target)
    assert broken == []


def test_links_are_found():
    assert "docs/tutorial.md" in links(ROOT / "README.md")
    assert any(target.startswith("#") for target in links(ROOT / "docs" / "rules.md"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_words_of_make_exist(page):
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    known = set(re.findall(r"^([a-z]+):", makefile, re.MULTILINE))
    code = "\n".join(CODE.findall(page.read_text(encoding="utf-8")))
    assert set(MAKE.findall(code)) <= known


def test_first_commands_of_the_readme():
    first = next(
        block for block in blocks((ROOT / "README.md").read_text(encoding="utf-8")) if block.kind == "sh"
    )
    assert [line.split("#")[0].strip() for line in first.text.splitlines()] == ["make demo", "make test"]


def test_every_page_can_be_reached():
    readme = set(links(ROOT / "README.md"))
    assert {f"docs/{page.name}" for page in PAGES if page.parent.name == "docs"} <= readme


@pytest.mark.parametrize(
    "folder", [each.name for each in sorted((ROOT / "tests").iterdir()) if any(each.glob("test_*.py"))]
)
def test_every_folder_of_tests_is_explained(folder):
    assert f"`tests/{folder}`" in (ROOT / "docs" / "contributing.md").read_text(encoding="utf-8")
