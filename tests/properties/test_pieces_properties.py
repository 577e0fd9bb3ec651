"""A text put together from its top keys is the same as YAML reads it whole, to every mark."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError
from ruamel.yaml.nodes import MappingNode, ScalarNode

from firmpedal.project.layout import DEEPEST
from firmpedal.project.pieces import composed

FILES = sorted(
    [
        *(Path(__file__).parents[2] / "examples").glob("*.yaml"),
        *(Path(__file__).parents[1] / "aircraft").glob("*.yaml"),
    ]
)
ODD = [
    "\n",
    "\r\n",
    " ",
    "#",
    ":",
    "- ",
    "[",
    "]",
    "{",
    "}",
    '"',
    "'",
    "|\n  a\n",
    ">",
    "key: ",
    "? ",
    "&a ",
    "*a",
    "\r",
    "\x85",
    "\u2028",
    "# \x85  b: 1\n",
    "    ",
    "  b: 1\n",
    "\n  b:\n    c: 1\n",
    "\n ",
]


def whole(text, levels):
    """What YAML makes of a text, or None where it refuses it, or where it is nested deeper."""
    yaml = YAML(typ="safe", pure=True)
    yaml.max_depth = levels
    yaml.composer.warn_double_anchors = False
    try:
        return yaml.compose(text)
    except (YAMLError, ValueError):
        return None


def told(node):
    """Everything that a node says, with its places."""
    places = [(mark.index, mark.line, mark.column) for mark in (node.start_mark, node.end_mark)]
    if isinstance(node, ScalarNode):
        return places, str(node.tag), node.anchor, node.style, node.value
    inner = [
        told(item) for pair in node.value for item in (pair if isinstance(node, MappingNode) else [pair])
    ]
    return places, str(node.tag), node.anchor, node.flow_style, inner


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_file_is_put_together_as_it_is_read(path):
    text = path.read_text(encoding="utf-8")
    together = composed(text, DEEPEST, whole)
    assert together is not None
    assert told(together) == told(whole(text, DEEPEST))


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(FILES), st.data())
def test_a_text_with_anything_put_in_anywhere_is_read_alike_or_not_at_all(path, data):
    text = path.read_text(encoding="utf-8")
    for _ in range(data.draw(st.integers(1, 3))):
        place = data.draw(st.integers(0, len(text)))
        text = text[:place] + data.draw(st.sampled_from(ODD)) + text[place:]
    together = composed(text, DEEPEST, whole)
    if together is not None:
        read = whole(text, DEEPEST)
        assert read is not None
        assert told(together) == told(read)


@pytest.mark.parametrize("deep", range(1, 8))
def test_a_text_nested_too_deeply_is_not_put_together(deep):
    text = "".join(f"{' ' * n}a:\n" for n in range(deep)) + " " * deep + "b: [{c: 1}]\n"
    for levels in range(1, 12):
        together, read = composed(text, levels, whole), whole(text, levels)
        assert (together is None) == (read is None)
