"""Under which addresses other machines of the local network find this one."""

from __future__ import annotations

import contextlib
import socket

# To which nothing is sent: the system only says from which of its addresses it would. The first is kept for
# documents (RFC 5737), the others stand for the networks that households have (RFC 1918).
TOWARDS = ("192.0.2.1", "10.255.255.254", "172.31.255.254", "192.168.255.254")


def own_addresses() -> tuple[str, ...]:
    """Addresses of this machine, the likeliest first; none where it is in no network."""
    found = [address for there in TOWARDS if (address := _towards(there))]
    if not found:
        with contextlib.suppress(OSError):
            found = socket.gethostbyname_ex(socket.gethostname())[2]
    return tuple(dict.fromkeys(each for each in found if not each.startswith(("127.", "0."))))


def _towards(there: str) -> str:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect((there, 9))
        except OSError:
            return ""
        return str(probe.getsockname()[0])
