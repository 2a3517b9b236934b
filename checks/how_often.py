"""How often the gust comes that moves a piece, as data."""

from ..loads.recurrence import recurrence
from ..loads.wind.how_often import Recurrence
from ..units.frozen import ByValue

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .examination import Examination


class MovingGust(ByValue, frozen=True):
    """The forecast ``gust`` in m/s that tips or slides a piece untied, and how often it comes.

    ``per`` is of how long each gust of a record is the greatest, where there is one.
    """

    gust: float
    comes: Recurrence
    per: str


def moving_gust(found: "Examination") -> float | None:
    """Return the forecast gust in m/s that tips or slides it untied; None above 150 m/s."""
    limits = found.limits
    known = [g for g in (limits.forecast_tipping, limits.forecast_sliding) if g is not None]
    return min(known, default=None)


def how_often(found: "Examination") -> MovingGust | None:
    """Return how often that gust comes here; None where it cannot be told."""
    gust = moving_gust(found)
    if gust is None or gust <= 0.0 or (comes := recurrence(gust, found.site)) is None:
        return None
    return MovingGust(gust, comes, found.site.peaks_per)
