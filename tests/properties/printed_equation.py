"""Work out an equation as it is printed: blanks multiply, later parts define further letters."""

import math
import re

FUNCTIONS = {name: getattr(math, name) for name in ("sin", "cos", "tan", "asin", "exp", "sqrt", "log10")} | {
    "max": max,
    "min": min,
    "ln": math.log,
}
INCH = 0.0254  # exact, international yard and pound agreement of 1959
POUND = 0.45359237  # the same
# Units that stand in an equation where its source has figures in them; the knot is 1852 m in an hour.
UNITS = {"in": INCH, "lb": POUND, "kt": 1852 / 3600, "ft_lbf": POUND * 9.80665 * 12 * INCH}


def evaluate(equation: str, numbers: dict[str, float]) -> float:
    """Give the left side of `y = a b, b = c^2` with numbers for the letters that are not defined in it."""
    main, *definitions = re.split(r", (?=\w+ = )", equation)
    letters = dict(numbers)
    for definition in definitions:
        letter, _, expression = definition.partition(" = ")
        letters[letter] = _value(expression, letters)
    return _value(main.partition(" = ")[2], letters)


def _value(expression: str, letters: dict[str, float]) -> float:
    python, before = [], ""
    for token in re.findall(r"[A-Za-z]\w*|\d+(?:\.\d+)?|[-+*/^(),]", expression):
        ended = before == ")" or (before[-1:].isalnum() and before not in FUNCTIONS)
        if ended and (token == "(" or token[0].isalnum()):  # noqa: S105
            python.append("*")
        python.append(str({"^": "**", **UNITS}.get(token, token)))
        before = token
    known = {**FUNCTIONS, "pi": math.pi, **letters}
    return eval(" ".join(python), {"__builtins__": {}}, known)  # noqa: S307 (equations of our own docstrings)
