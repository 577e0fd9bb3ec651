"""`make bench`: run every race and print its ratio (above 1: ours is faster)."""

from __future__ import annotations

import sys

from benchmarks import editing, feel, fitting, heat, tube


def main() -> None:
    """Run the races one after the other, then what an editor waits for."""
    for race in (tube.race, fitting.race, feel.race, heat.race):
        sys.stdout.write(f"{race()}\n")
    for waiting in (editing.edits, editing.start):
        sys.stdout.write(f"{waiting()}\n")


if __name__ == "__main__":
    main()
