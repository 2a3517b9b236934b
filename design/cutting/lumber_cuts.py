"""Sticks laid out along lumber as it is sold, mitred ones end for end."""

from collections.abc import Sequence
from math import cos

from ...units.frozen import ByValue
from .blanks import ROOM


class Run(ByValue, frozen=True):
    """Pieces of one kind to be sawn from lumber of one section: lengths in m, mitre in rad."""

    kind: int
    count: int
    long_point: float
    short_point: float
    mitre: float


class BoughtStick(ByValue, frozen=True):
    """One stick as bought: its length in m, and how many of each kind are sawn from it."""

    length: float
    pieces: tuple[tuple[int, int], ...]


class LumberToBuy(ByValue, frozen=True):
    """What to buy of one section: the sticks, and the kinds that are longer than any sold."""

    sticks: tuple[BoughtStick, ...]
    too_long: tuple[int, ...]
    volume_share: float

    @property
    def waste(self) -> float:
        """Return the part of what is bought that goes into none of the pieces."""
        return 1.0 - self.volume_share


def lay_out(runs: Sequence[Run], lengths: Sequence[float], kerf: float) -> LumberToBuy:
    """Return the sticks to buy for all runs, from lumber sold in ``lengths`` m.

    Longest first, each to the first stick that has room; then each stick is exchanged for the
    shortest that does. It is tried with each length as the one to fill; the least total is taken.
    Mitred pieces share a cut: turned end for end, k of them take long + (k - 1)(mean + kerf).
    """
    longest = max(lengths)
    too_long = tuple(run.kind for run in runs if run.long_point > longest + ROOM)
    fitting = [run for run in runs if run.kind not in too_long]
    pieces = sorted(
        (run for run in fitting for _ in range(run.count)), key=lambda run: -run.long_point
    )
    if not pieces:
        return LumberToBuy((), too_long, 1.0)
    tries = [
        _filled(pieces, length, lengths, kerf)
        for length in lengths
        if length + ROOM >= pieces[0].long_point
    ]
    best = min(tries, key=lambda sticks: (sum(stick.length for stick in sticks), len(sticks)))
    bought = sum(stick.length for stick in best)
    share = sum((run.long_point + run.short_point) / 2.0 for run in pieces) / bought
    return LumberToBuy(tuple(best), too_long, share)


def length_taken(pieces: Sequence[Run], kerf: float) -> float:
    """Return the length in m that pieces take of a stick, those of one kind sawn together."""
    total = 0.0
    for kind in dict.fromkeys(run.kind for run in pieces):
        alike = [run for run in pieces if run.kind == kind]
        one, more = alike[0], len(alike) - 1
        mean = (one.long_point + one.short_point) / 2.0
        total += one.long_point + more * (mean + kerf / cos(one.mitre)) + kerf
    return total - kerf


def _filled(
    pieces: Sequence[Run], length: float, lengths: Sequence[float], kerf: float
) -> list[BoughtStick]:
    sticks: list[list[Run]] = []
    for piece in pieces:
        for stick in sticks:
            if length_taken([*stick, piece], kerf) <= length + ROOM:
                stick.append(piece)
                break
        else:
            sticks.append([piece])
    return [_bought(stick, lengths, kerf) for stick in sticks]


def _bought(pieces: Sequence[Run], lengths: Sequence[float], kerf: float) -> BoughtStick:
    taken = length_taken(pieces, kerf)
    length = min(each for each in lengths if taken <= each + ROOM)
    kinds = dict.fromkeys(run.kind for run in pieces)
    return BoughtStick(
        length, tuple((kind, sum(run.kind == kind for run in pieces)) for kind in kinds)
    )
