"""What a text says as YAML alone reads it, whatever the program makes of it."""

from __future__ import annotations

from io import StringIO

from ruamel.yaml import YAML


def yaml_of(text):
    return YAML(typ="safe", pure=True).load(StringIO(text))


def at(said, place):
    """What stands at a place such as `lines.run.via.2`, counted from one."""
    for step in place.split("."):
        said = said[int(step) - 1] if isinstance(said, list) else said[step]
    return said
