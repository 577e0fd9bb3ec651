"""How the builder buys: spares, practice pieces and packs, where our own rules are overruled."""

from __future__ import annotations

from typing import Annotated

from firmpedal.model.fields import (
    Declared,
    Members,
    Named,
    OptionalCount,
    Several,
    Text,
)


class Pack(Named):
    """A thing that is sold by so many: `of` is its name on the parts list."""

    of: Text
    pieces: Several


class Buying(Declared):
    """What the builder orders beyond what is used; a count holds for each row of the parts list."""

    spare_nuts_and_sleeves: OptionalCount
    spare_compression_parts: OptionalCount
    spare_washers_and_rings: OptionalCount
    spare_clamps: OptionalCount
    spare_fittings: OptionalCount
    practice_pieces: OptionalCount
    packs: Annotated[tuple[Pack, ...], Members] = ()
