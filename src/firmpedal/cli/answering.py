"""What most commands do with a file: work it out, and print it as data or in words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_json

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation


def answered(
    file: Path,
    option: str | None,
    *,
    as_json: bool,
    data: Callable[[Evaluation], dict[str, Any]],
    show: Callable[[Console, Evaluation], None],
    code: Callable[[Evaluation], int] = lambda _: 0,
) -> int:
    """Print what a file comes to; the result is the exit code.

    Args:
        file: The aircraft's file.
        option: One of its options; none for the file as written.
        as_json: Whether data are wanted, for other programs.
        data: The data.
        show: Prints it for people.
        code: The exit code of a file that could be worked out.
    """
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(data(evaluation))
    else:
        show(console(), evaluation)
    return code(evaluation)
