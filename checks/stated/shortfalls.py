"""What of a piece falls short besides its holding: loose parts that go, loads it does not stand."""

from ..examination import Examination
from ..judged.judging import Kind

_LOOSE = (Kind.LOOSE, Kind.LOOSE_SLIDING)


def loose_off(found: Examination) -> tuple[str, ...]:
    """Return the loose parts that tip or slide by themselves, in the file's order."""
    failing = (check for check in found.checks if not check.passes)
    return tuple(dict.fromkeys(check.subject for check in failing if check.kind in _LOOSE))


def loads_not_stood(found: Examination) -> tuple[str, ...]:
    """Return the named loads under which anything of it fails: as a whole, a joint, a part."""
    under = {check.load for check in found.checks if not check.passes}
    named = (one.load.name for one in found.loads)
    return tuple(name for name in named if name in under)
