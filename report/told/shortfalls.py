"""What of a piece falls short besides its holding: loose parts that go, loads it does not stand."""

from ...checks.examination import Examination
from ...checks.judged.judging import Kind

_LOOSE = (Kind.LOOSE, Kind.LOOSE_SLIDING)


def loose_off(examination: Examination) -> list[str]:
    """Return the loose parts that tip or slide by themselves, in the file's order."""
    failing = (check for check in examination.checks if not check.passes)
    return list(dict.fromkeys(check.subject for check in failing if check.kind in _LOOSE))


def loads_not_stood(examination: Examination) -> list[str]:
    """Return the named loads under which anything of it fails: as a whole, a joint, a part."""
    under = {check.load for check in examination.checks if not check.passes}
    named = (one.load.name for one in examination.loads)
    return [name for name in named if name in under]
