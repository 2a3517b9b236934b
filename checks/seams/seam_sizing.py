"""What would make a part's seams hold: fasteners nearer together, larger ones, screws, cleats."""

from collections.abc import Iterator

from ...materials.fastener import Fastener
from ...units.frozen import ByValue, replace
from ..fasteners.fastener_sets import CLEAT, block_thickness
from ..fasteners.spacing import EXACT_SHARE
from ..joints.larger_fasteners import larger, screws
from ..judged.build_steps import down
from ..timber.books import titled
from .seam_check import SeamFound, refastened_seams
from .seam_fasteners import greatest_spacing, room_along_a_seam


class SeamRemedy(ByValue, frozen=True):
    """One way to make seams hold: ``kind`` is "nearer", "larger" or "screws".

    ``found`` are the seams so, checked as any; ``before`` the next step, which fails, if any.
    """

    kind: str
    found: SeamFound
    before: SeamFound | None


class SeamSizing(ByValue, frozen=True):
    """A part's seams, the ways to make them hold, and whether cleats were put in for that."""

    seam: SeamFound
    remedies: tuple[SeamRemedy, ...]
    adds_cleats: bool


def size_seam(seam: SeamFound, step: float, metric: bool = False) -> SeamSizing:
    """Return the ways to make a part's seams hold; none where they do.

    Spacings are whole ``step`` m; larger fasteners are ``metric`` ones or sold by the inch. Without
    cleats nothing counts: they are then put in, of a common light wood.
    """
    if seam.check.passes:
        return SeamSizing(seam, (), adds_cleats=False)
    adds = seam.row.cleat is None
    base = refastened_seams(seam, replace(seam.row, cleat=CLEAT)) if adds else seam
    nearer = _nearer(base, step)
    other = _other(base, step, None if nearer is None else base.row.spacing, metric)
    found = [remedy for remedy in (nearer, *other) if remedy is not None]
    return SeamSizing(seam, tuple(found), adds)


def _nearer(seam: SeamFound, step: float) -> SeamRemedy | None:
    """Return the same fastener at the greatest spacing up to the given one that holds."""
    fits = _fits(seam, seam.row.fastener, step, seam.row.spacing)
    if fits is None:
        return None
    wider = replace(fits.row, spacing=min(fits.row.spacing + step, seam.row.spacing))
    before = refastened_seams(seam, wider) if wider.spacing > fits.row.spacing else None
    return SeamRemedy("nearer", fits, None if before is None or before.check.passes else before)


def _other(seam: SeamFound, step: float, least: float | None, metric: bool) -> Iterator[SeamRemedy]:
    """Return the next larger fastener and the least screw that hold ``least`` m apart or more.

    Without ``least``, apart as they may be. None reaches farther into the cleat than a 2x2 is
    thick, or than the fastener there is.
    """
    now = seam.row.fastener
    reach = max(block_thickness(), seam.holds.penetration)
    ladders = [("larger", larger(now, metric))]
    if now.kind in ("nail", "staple"):
        ladders.append(("screws", screws(metric)))
    for kind, ladder in ladders:
        before: SeamFound | None = None
        for fastener in ladder:
            fits = _fits(seam, fastener, step, seam.row.spacing)
            if fits is None or fits.holds.penetration > reach * (1.0 + 1.0e-9):
                continue
            if least is None or fits.row.spacing >= least * (1.0 - 1.0e-9):
                yield SeamRemedy(kind, fits, _at(seam, before, fits.row.spacing))
                break
            before = fits


def _at(seam: SeamFound, smaller: SeamFound | None, spacing: float) -> SeamFound | None:
    """Return the next smaller fastener at that spacing, where it fails."""
    if smaller is None:
        return None
    found = refastened_seams(seam, replace(smaller.row, spacing=spacing))
    return None if found.check.passes else found


def _fits(seam: SeamFound, fastener: Fastener, step: float, most: float) -> SeamFound | None:
    """Return the seams with that fastener as far apart as holds, up to ``most`` m."""
    crown = seam.row.crown if fastener.kind == "staple" else None
    row = replace(seam.row, fastener=fastener, crown=crown)
    try:
        tried = refastened_seams(seam, row)
    except ValueError:
        return None
    apart = greatest_spacing(fastener, tried.holds, seam.seams.sideways, seam.seams.pull)
    if apart is None:
        return None
    room = room_along_a_seam(row, seam.driven.side, titled(tried.holds.book))
    most = min(most, seam.seams.long - 2.0 * room.end)
    spacing = most if apart >= most else down(apart, step) * step
    while spacing >= room.along * (1.0 - EXACT_SHARE):
        found = refastened_seams(seam, replace(row, spacing=spacing))
        if found.check.passes:
            return found
        spacing -= step  # nearer in a row each may hold less
    return None
