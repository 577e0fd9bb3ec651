"""HTML read back as a tree. What we write is also XML, so that nothing may be left open or unescaped."""

from __future__ import annotations

from xml.etree import ElementTree as ET

from firmpedal.export.html import html


def tree(*blocks, within=""):
    return read(html(blocks, within))


def read(text: str) -> ET.Element:
    return ET.fromstring(f"<body>{text}</body>")  # noqa: S314  written by our own program


def words(element: ET.Element) -> str:
    return "".join(element.itertext())


def of_class(root: ET.Element, name: str) -> list[ET.Element]:
    return [each for each in root.iter() if name in each.get("class", "").split()]


def tags(root: ET.Element) -> list[str]:
    return [each.tag.rpartition("}")[2] for each in root]


def names(root: ET.Element) -> list[str]:
    """The names of all inputs, in order."""
    return [each.get("name", "") for each in root.iter("input")]
