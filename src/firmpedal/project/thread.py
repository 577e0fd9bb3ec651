"""What builders write for a port's thread, as an interface."""

from __future__ import annotations

import re

from firmpedal.model.part import Form, Gender, Interface

TAPER = {"1/16": "1/16-27", "1/8": "1/8-27", "1/4": "1/4-18", "3/8": "3/8-18", "1/2": "1/2-14"}

_TAPER = re.compile(r"(?P<size>\d/\d+)(?:-\d\d)?\s*(?:in\s*)?(?:NPTF?|ANPT|pipe)", re.IGNORECASE)
_METRIC = re.compile(r"M(?P<diameter>\d+)\s*(?:x|\u00d7)\s*(?P<pitch>\d+(?:\.\d+)?)", re.IGNORECASE)
_FLARE = re.compile(
    r"(?:flare\s*)?-?(?P<dash>\d+)\s*(?:flare)?\s*(?P<angle>37|45)(?:\s*deg\w*)?", re.IGNORECASE
)
_COMPRESSION = re.compile(r"compression\s*(?P<size>\d+/\d+|\d+)\s*(?P<unit>in|mm)?", re.IGNORECASE)
_BOSS = re.compile(r"-(?P<dash>\d+)\s*(?:straight[- ]thread\s*)?boss", re.IGNORECASE)


class ThreadError(ValueError):
    """A thread that cannot be read; `suggestion` says how threads are written."""

    def __init__(self, text: str) -> None:
        super().__init__(f"`{text}` is not a thread that can be read")
        self.suggestion = "write such as `1/8 NPT female`, `M10 x 1 female`, `-4 flare 37 male`"


def read_thread(text: str) -> Interface:
    """Read `1/8 NPT female`, `M10 x 1 female`, `-4 flare 37 male` or `compression 1/4 in female`.

    Raises:
        ThreadError: The text is none of these, or the gender is missing.
    """
    words = text.split()
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
        return Form.METRIC, f"M{found['diameter']}x{found['pitch']}"
    if found := _BOSS.fullmatch(body):
        return Form.BOSS, f"-{found['dash']}"
    if found := _COMPRESSION.fullmatch(body):
        return Form.COMPRESSION, f"{found['size']} {(found['unit'] or 'in').lower()}"
    if found := _FLARE.fullmatch(body.replace(" flare", " flare")):
        return (Form.FLARE_37 if found["angle"] == "37" else Form.FLARE_45), f"-{found['dash']}"
    raise ThreadError(text)
