"""Small pictures of layouts, in the colour of the text.

Seen from the left; legs are seen from the front, and seats from above, with the nose to the left.
"""

from __future__ import annotations


def _picture(*marks: str) -> str:
    return (
        '<svg class="fp-picture" viewBox="0 0 120 72" fill="none" stroke="currentColor" stroke-width="2.5"'
        f' stroke-linecap="round" stroke-linejoin="round" aria-hidden="true">{"".join(marks)}</svg>'
    )


def _way(path: str, weight: float = 2.5) -> str:
    return f'<path d="{path}" stroke-width="{weight:g}"/>'


def _wheel(x: float, y: float, radius: float = 7) -> str:
    return f'<circle cx="{x:g}" cy="{y:g}" r="{radius:g}"/>'


def _words(x: float, y: float, words: str) -> str:
    return f'<text x="{x:g}" y="{y:g}" font-size="13" fill="currentColor" stroke="none">{words}</text>'


GROUND = _way("M6 66H114", 1.2)
_LEVEL = _way("M12 34C22 24 46 22 60 24L108 30V20M12 34C24 44 60 44 108 34")
_TAIL_DOWN = _way("M12 26C22 16 46 18 60 24L108 46L110 34M12 26C22 42 56 44 108 50")


def _from_the_front(*legs: str) -> str:
    """A body with what carries it, wheels at both sides."""
    body = _way("M46 30C46 14 74 14 74 30C74 40 46 40 46 30Z")
    tyres = _way("M20 48V64M100 48V64", 7)
    return _picture(GROUND, body, tyres, *legs)


def _seats(*with_brakes: tuple[int, int], without: tuple[tuple[int, int], ...] = ()) -> str:
    """A cabin from above with its middle line, its seats, and the two pedals before each that has brakes."""
    cabin = _way("M116 6H24C10 6 6 22 6 36C6 50 10 66 24 66H116", 1.6)
    middle = '<path d="M2 36H118" stroke-width="1.2" stroke-dasharray="9 3 2 3"/>'
    pedals = (_way(f"M{x - 16} {y - 9}V{y - 4}M{x - 16} {y + 4}V{y + 9}", 4) for x, y in with_brakes)
    seats = (_seat(x, y) for x, y in with_brakes)
    return _picture(cabin, middle, *seats, *pedals, *(_seat(x, y, 1.2) for x, y in without))


def _seat(x: int, y: int, weight: float = 2.5) -> str:
    """A seat from above: its cushion, and its back across the rear of it."""
    return _way(f"M{x + 18} {y - 9}H{x}V{y + 9}H{x + 18}", weight) + _way(
        f"M{x + 18} {y - 9}V{y + 9}", 2 * weight
    )


PICTURES: dict[tuple[str, str], str] = {
    ("gear", "tailwheel"): _picture(
        GROUND, _TAIL_DOWN, _way("M40 41L34 58"), _wheel(34, 58), _wheel(104, 61, 4)
    ),
    ("gear", "nosewheel"): _picture(
        GROUND, _LEVEL, _way("M24 40V59M62 41L66 58"), _wheel(24, 60, 5), _wheel(66, 58)
    ),
    ("leg", "leaf"): _from_the_front(_way("M50 37L20 56M70 37L100 56", 5)),
    ("leg", "rod"): _from_the_front(_way("M50 37L20 56M70 37L100 56", 2.5)),
    ("leg", "link"): _from_the_front(
        _way("M50 37L32 48L20 56M70 37L88 48L100 56"), _way("M36 32L30 48M84 32L90 48", 4)
    ),
    ("leg", "bow"): _from_the_front(_way("M20 56C34 42 46 38 60 38S86 42 100 56", 4)),
    ("brakes", "toe"): _picture(
        _way("M40 62L52 30L40 14", 5), _way("M20 66H100", 1.2), _way("M66 20L50 22M56 17L50 22L57 27")
    ),
    ("brakes", "heel"): _picture(
        _way("M44 62L56 18", 3),
        _way("M66 60L74 48", 6),
        _way("M20 66H100", 1.2),
        _way("M94 42L79 50M83 43L79 50L87 52"),
    ),
    ("brakes", "hand"): _picture(
        _way("M46 58L78 18", 5),
        _way("M72 14L84 24", 4),
        _way("M30 62H62V54H30Z"),
        _way("M98 34C92 42 84 46 74 44M82 39L74 44L80 51"),
    ),
    ("seats", "1"): _seats((56, 36)),
    ("seats", "off-centre"): _seats((56, 51), without=((56, 21),)),
    ("seats", "tandem"): _seats((36, 36), (88, 36)),
    ("seats", "side-by-side"): _seats((56, 51), (56, 21)),
    ("valve", "yes"): _picture(
        _way("M8 40H44M76 40H112"), _way("M44 28L76 52V28L44 52Z"), _way("M60 40V20M50 20H70")
    ),
    ("valve", "no"): _picture(_way("M8 40H112")),
    ("length", "in"): _picture(
        _way("M8 26H112V50H8Z"), _way("M34 26V38M60 26V42M86 26V38"), _words(12, 20, "inch")
    ),
    ("length", "mm"): _picture(
        _way("M8 26H112V50H8Z"),
        _way(
            "M18 26V34M28 26V34M38 26V34M48 26V34M58 26V42M68 26V34M78 26V34M88 26V34M98 26V34M108 26V42", 1.6
        ),
        _words(12, 20, "millimetre"),
    ),
}
