"""No text, however hostile, becomes anything but text: read back by an XML and by an HTML parser."""

from __future__ import annotations

from html.parser import HTMLParser
from xml.etree import ElementTree as ET

from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.export.html import sheet_html
from firmpedal.export.html_words import marked
from firmpedal.report.sheet import (
    BOX,
    Blank,
    Blanks,
    Bullets,
    Drawing,
    Facts,
    Fields,
    Figure,
    Figures,
    Group,
    Heading,
    Label,
    Paragraph,
    Sheet,
    Sum,
    Table,
    Tone,
)

NASTY = (
    "<script>alert(1)</script>", "</article>", '" onload="x', "' autofocus onfocus='x", "&lt;b&gt;", "]]>",
    "<!--", "-->", "</svg><img src=x onerror=y>", "javascript:x", "\x00", "\x1b[31m", "\ud800", "\u202e",
    "&#0;", "{{x}}", "${x}", "`x`", "a_b.c/d-e" * 4, "\n", "\t",
)  # fmt: skip
ALLOWED = {
    "article", "h2", "h3", "p", "strong", "span", "ul", "li", "label", "input", "fieldset", "legend", "div",
    "dl", "dt", "dd", "table", "caption", "thead", "tbody", "tr", "th", "td", "figure", "figcaption", "svg",
    "text", "wbr",
}  # fmt: skip
UNUSABLE = {*map(chr, range(0x09)), "\x0b", "\x0c", *map(chr, range(0x0E, 0x20)), "\x7f", "\r",
            *map(chr, range(0x80, 0xA0)), "\ufffe", "\uffff"}  # fmt: skip
texts = st.lists(
    st.one_of(st.sampled_from(NASTY), st.text(st.characters(codec=None), max_size=8)), max_size=5
).map("".join)


def sheet_of(text):
    """A sheet with the same text at every place where one can stand."""
    return Sheet(
        text,
        (
            Heading(text),
            *(Paragraph(text, tone) for tone in Tone),
            Bullets((text,)),
            Bullets((text,), boxes=True),
            Table((text, text, ""), ((text, BOX, ""), (text, "", text)), title=text, pen=frozenset({1, 2})),
            Figures((Figure(text, text, text),)),
            Facts(((text, text), (text, text))),
            Fields((text,)),
            Blanks(text, (Blank(text, text, (text,)),)),
            Group((Sum(text, text, text, text, (text,), text),)),
            Drawing((10.0, 10.0), (Label(text, (5.0, 5.0)),), text),
        ),
        subtitle=text,
    )


class Seen(HTMLParser):
    """Which tags and attributes an HTML parser finds."""

    def __init__(self):
        super().__init__()
        self.tags, self.attributes, self.others = set(), set(), []

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attrs}

    def handle_comment(self, data):
        self.others.append(data)

    handle_decl = handle_pi = unknown_decl = handle_comment


@settings(max_examples=150)
@given(texts)
def test_hostile_text_stays_text(text):
    made = sheet_html(sheet_of(text))
    made.encode("utf-8")  # no half of a pair is left
    seen = Seen()
    seen.feed(made)
    seen.close()
    assert seen.tags <= ALLOWED
    assert not seen.attributes & {"onload", "onerror", "onfocus", "autofocus", "style", "src", "href", "id"}
    assert seen.others == []


@settings(max_examples=150)
@given(texts)
def test_the_text_arrives_as_it_was(text):
    root = ET.fromstring(sheet_html(sheet_of(text)))  # noqa: S314
    shown = "".join(root.find("h3").itertext())
    text = marked(text)  # signs of the file in quotes, as builders read them
    assert shown == "".join("\ufffd" if bad(sign) else sign for sign in text)
    named = root.get("aria-label")
    assert named == "".join("\ufffd" if bad(sign) else sign for sign in " ".join(text.split()))


def bad(sign):
    return sign in UNUSABLE or "\ud800" <= sign <= "\udfff"
