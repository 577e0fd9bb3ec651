"""The app on the local network: the pairing, and the addresses that a phone types."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.web.network import own_addresses

if TYPE_CHECKING:
    from firmpedal.web.pairing import Pairing

EVERYWHERE = "0.0.0.0"  # noqa: S104  asked for with --lan, and behind the door for phones


@dataclass(frozen=True)
class Lan:
    """What lets phones in, and where it listens."""

    pairing: Pairing
    port: int

    def addresses(self) -> tuple[str, ...]:
        """What to type on the phone; none where this machine is in no network."""
        return tuple("http://" + f"{each}:{self.port}" for each in own_addresses())
