"""Files that a design's text names beside itself: only such that lie in its own folder."""

from ..checks.inputs import scanned
from ..design.faults import Fault

_NAMING = frozenset({("part", "outline"), ("site", "gust_record")})


def named_elsewhere(text: str, file: str) -> tuple[Fault, ...]:
    """Return a fault for each drawing or record that a text names outside the design's folder.

    A text that comes from a browser reads no file by a path.
    """
    look = scanned(text)
    found: list[Fault] = []
    for spot, (begin, end) in look.values.items():
        if (spot.table, spot.key) not in _NAMING:
            continue
        name = look.seen[begin:end]
        if any(mark in name for mark in "/\\:") or ".." in name or "\\" in name:
            expected = "the name of a file in the folder of the design, without a path"
            found.append(Fault(file, look.line(spot), spot.table, spot.key, name, expected))
    return tuple(found)
