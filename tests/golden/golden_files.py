"""Golden files: text that builders see, compared with a tolerance in every figure."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent / "files"
FIGURE = re.compile(r"\d[\d,]*(?:\.\d+)?")
POINT = re.compile(r"\[\s+(-?[\d.]+),\s+(-?[\d.]+)\s+\]")  # on one line, so that a diff can be read
# A coordinate of a drawing may move by this much, in points: the rounding of two machines.
COORDINATE = 0.05


def compared(name: str, found: Any, *, rewrite: bool) -> list[str]:
    """Compare plain data with its golden file, or write the file; the differences are the answer."""
    path = FOLDER / f"{name}.json"
    if rewrite:
        path.parent.mkdir(exist_ok=True)
        text = json.dumps(found, indent=1, ensure_ascii=False)
        path.write_text(POINT.sub(r"[\1, \2]", text) + "\n", encoding="utf-8")
        return []
    if not path.exists():
        return [f"{path.name} is missing: write it with `make golden`, and read it"]
    return differences(json.loads(path.read_text(encoding="utf-8")), found, name)


def differences(golden: Any, found: Any, place: str) -> list[str]:
    """Every place where two pieces of plain data differ by more than rounding."""
    if isinstance(golden, dict) and isinstance(found, dict) and golden.keys() == found.keys():
        return [line for key in golden for line in differences(golden[key], found[key], f"{place}.{key}")]
    if isinstance(golden, list) and isinstance(found, list) and len(golden) == len(found):
        pairs = enumerate(zip(golden, found, strict=True))
        return [line for n, (one, other) in pairs for line in differences(one, other, f"{place}.{n}")]
    if isinstance(golden, str) and isinstance(found, str):
        return [] if _same_text(golden, found) else [f"{place}: was {golden!r}, is {found!r}"]
    if type(golden) is type(found) is float:
        near = math.isclose(golden, found, abs_tol=COORDINATE)
        return [] if near else [f"{place}: was {golden}, is {found}"]
    return (
        [] if golden == found and type(golden) is type(found) else [f"{place}: was {golden!r}, is {found!r}"]
    )


def _same_text(golden: str, found: str) -> bool:
    """The same words, and figures that differ by one in their last digit at most."""
    if FIGURE.sub("0", golden) != FIGURE.sub("0", found):
        return False
    pairs = zip(FIGURE.findall(golden), FIGURE.findall(found), strict=True)
    return all(_near(one, other) for one, other in pairs)


def _near(one: str, other: str) -> bool:
    """Whole numbers are names, counts and fractions, and must agree; only decimals are rounded figures."""
    if one == other:
        return True
    decimals = len(one.partition(".")[2])
    if decimals == 0 or decimals != len(other.partition(".")[2]):
        return False
    return abs(float(one.replace(",", "")) - float(other.replace(",", ""))) < 1.5 * 10**-decimals
