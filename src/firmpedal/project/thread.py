"""What builders write for a port's thread, as an interface."""

from __future__ import annotations

import re

from firmpedal.model.part import Form, Gender, Interface
from firmpedal.project.names import quoted
from firmpedal.project.thread_hints import thread_hint
from firmpedal.project.thread_spelling import TAPER

_PLAIN = re.ASCII | re.IGNORECASE
_TAPER = re.compile(r"(?P<size>\d/\d{1,2})(?:-\d\d)? ?(?:in )?(?:NPTF?|ANPT|pipe)", _PLAIN)
_METRIC = re.compile(r"M(?P<diameter>\d{1,2}) ?x ?(?P<pitch>\d(?:\.\d{1,2})?)", _PLAIN)
_FLARE = re.compile(r"(?:flare )?-?(?P<dash>\d{1,2}) ?(?:flare )?(?P<angle>37|45)(?: ?deg\w*)?", _PLAIN)
_COMPRESSION = re.compile(r"compression (?P<size>\d{1,2}/\d{1,2}|\d{1,2}) ?(?P<unit>in|mm)?", _PLAIN)
_BOSS = re.compile(r"-(?P<dash>\d{1,2}) ?(?:straight[- ]thread )?boss", _PLAIN)


class ThreadError(ValueError):
    """A thread that cannot be read; `suggestion` says how the file writes what may be meant."""

    def __init__(self, text: str) -> None:
        wrong, self.suggestion = thread_hint(text)
        super().__init__(f"{quoted(text)} {wrong}")


def read_thread(text: str) -> Interface:
    """Read `1/8 NPT female`, `M10 x 1 female`, `-4 flare 37 male` or `compression 1/4 in female`.

    Raises:
        ThreadError: The text is none of these, or the gender is missing.
    """
    words = text.replace("\N{MULTIPLICATION SIGN}", "x").split()
    genders = [Gender(word.lower()) for word in words if word.lower() in ("male", "female")]
    body = " ".join(word for word in words if word.lower() not in ("male", "female"))
    if len(genders) != 1:
        raise ThreadError(text)
    form, size = _form_and_size(body, text)
    return Interface(form, size, genders[0])


def _form_and_size(body: str, text: str) -> tuple[Form, str]:
    if (found := _TAPER.fullmatch(body)) and found["size"] in TAPER:
        return Form.PIPE, TAPER[found["size"]]
    if found := _METRIC.fullmatch(body):
        return Form.METRIC, f"M{int(found['diameter'])}x{float(found['pitch']):g}"
    if found := _BOSS.fullmatch(body):
        return Form.BOSS, f"-{int(found['dash'])}"
    if found := _COMPRESSION.fullmatch(body):
        return Form.COMPRESSION, f"{found['size']} {(found['unit'] or 'in').lower()}"
    if found := _FLARE.fullmatch(body):
        return (Form.FLARE_37 if found["angle"] == "37" else Form.FLARE_45), f"-{int(found['dash'])}"
    raise ThreadError(text)
