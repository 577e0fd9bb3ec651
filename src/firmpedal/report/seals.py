"""What seals a joint besides threads and cones: which washer, O-ring or insert goes where, in which order.

Common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.fit.chain import is_banjo_bolt
from firmpedal.model.part import Category, Form

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from firmpedal.model.part import Part

    Group = tuple[Part, ...]

NEW_WASHER = "Take new washers: never a used one again."
NEW_RING = "Take a new O-ring: never a used one again."
NEW_SLEEVE = "Take a new sleeve and insert for every new end: never used ones again."


def order_words(groups: Sequence[Group]) -> str:
    """How the groups of a chain from a line to a port go together, empty where nothing special goes on."""
    return " ".join([*_soft_tube([group[0] for group in groups]), *_sealed(groups)])


def _soft_tube(parts: Sequence[Part]) -> Iterator[str]:
    """Nut and sleeve over the tube, the insert into it."""
    insert = next((part for part in parts if _has(part, Form.PLAIN_TUBE)), None)
    if insert is None:
        return
    over = [part for part in parts if part is not insert and _has(part, Form.COMPRESSION_SHOULDER)]
    names = ", then ".join(_named(part) for part in reversed(over))
    yield f"Over the tube first {names}; then {_named(insert)} into its end, up to the rim. {NEW_SLEEVE}"


def _sealed(groups: Sequence[Group]) -> Iterator[str]:
    """What lies under the shoulder of each body, one group after another."""
    washers = rings = False
    for group in groups:
        body, *rest = group
        ring, washer = (
            next((part for part in rest if _has(part, form)), None)
            for form in (Form.O_RING, Form.WASHER_FACE)
        )
        if is_banjo_bolt(body):
            washers = True
            yield f"In this order: {', '.join(_kind(part) for part in group)}, port."
        elif ring is not None:
            rings = True
            yield _ring_words(body, ring, rest)
        elif washer is not None:
            washers = True
            yield f"Put {_named(washer)} between {body.designation} and the port."
    yield from [NEW_WASHER] if washers else []
    yield from [NEW_RING] if rings else []


def _ring_words(body: Part, ring: Part, rest: Sequence[Part]) -> str:
    """An O-ring under a hexagon, or behind a nut that locks a fitting which points somewhere."""
    nut = next((part for part in rest if part.category is Category.JAM_NUT), None)
    if nut is None:
        return f"Put {_named(ring)} over the thread of {body.designation}, up to its hexagon."
    return (
        f"Run {_named(nut)} right back on {body.designation} and put {_named(ring)} into the groove "
        "after it; screw it in until the O-ring touches, back by less than a turn until it points, then lock "
        "it with the nut."
    )


def _named(part: Part) -> str:
    return f"{_kind(part)} {part.designation}"


def _kind(part: Part) -> str:
    return part.name.partition(",")[0]


def _has(part: Part, form: Form) -> bool:
    return any(end.interface.form is form for end in part.ends)
