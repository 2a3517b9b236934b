"""Every fastener by its trade name with what it holds in one wood, to be shown as a table."""

from dataclasses import dataclass

from ..materials import fasteners
from ..materials import find as find_material
from ..materials.fastener import Fastener
from .withdrawal import withdrawal


@dataclass(frozen=True)
class FastenerValue:
    """A fastener, and its NDS reference withdrawal in N per m; None without wood or equation."""

    fastener: Fastener
    withdrawal: float | None


def listing(wood: str | None = None) -> list[FastenerValue]:
    """Return every fastener that has a trade name, in the wood of that name.

    KeyError for a material that is not known, ValueError for one that takes no fastener by NDS.
    """
    gravity = None if wood is None else _gravity(wood)
    return [FastenerValue(each, _held(each, gravity)) for each in fasteners.listing()]


def _gravity(wood: str) -> float:
    gravity = find_material(wood).specific_gravity
    if gravity is None:
        raise ValueError(f"{wood!r}: NDS assigns it no specific gravity for fasteners")
    return gravity


def _held(fastener: Fastener, gravity: float | None) -> float | None:
    kind = fastener.withdrawal_kind
    if gravity is None or kind is None:
        return None
    return float(withdrawal(kind, fastener.diameter, gravity))
