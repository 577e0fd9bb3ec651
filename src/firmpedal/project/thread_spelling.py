"""How the file spells a thread: `1/8 NPT female`, `M10 x 1 female`, `-4 flare 37 male`."""

from __future__ import annotations

from firmpedal.model.part import Form, Interface

TAPER = {"1/16": "1/16-27", "1/8": "1/8-27", "1/4": "1/4-18", "3/8": "3/8-18", "1/2": "1/2-14"}

_SHAPES = {
    Form.FLARE_37: "{size} flare 37",
    Form.FLARE_45: "{size} flare 45",
    Form.BOSS: "{size} boss",
    Form.COMPRESSION: "compression {size}",
}


def spelled_thread(thread: Interface) -> str:
    """Write the thread of a port as the file has it; it reads back as the same."""
    if thread.form is Form.PIPE:
        return f"{thread.size.partition('-')[0]} NPT {thread.gender}"
    if thread.form is Form.METRIC:
        return f"{thread.size.replace('x', ' x ')} {thread.gender}"
    return f"{_SHAPES[thread.form].format(size=thread.size)} {thread.gender}"
