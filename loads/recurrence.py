"""How often a gust comes at a site: by its own gusts, its record of peaks, or its code's map."""

import numpy as np

from .methods import standard_of
from .wind.how_often import LONGER, Recurrence, years_between
from .wind.site import Site


def recurrence(gust: float, site: Site) -> Recurrence | None:
    """Return how often a forecast ``gust`` in m/s comes at the site; None where it cannot be told.

    By the site's own ``gusts``, else by its record of ``peaks``; these hold in hurricane regions
    too. Else by the map of its standard, as that tells it: in open country, as a map is drawn.
    """
    if len(site.gusts) >= 2:
        years = sorted(site.gusts)
        T = years_between(gust, years, [site.gusts[each] for each in years])
        return Recurrence(float(T), "local values", years[-1])
    if site.peaks:
        from .wind.peak_gusts import fit_peaks, recurrence_by_peaks  # noqa: PLC0415 - few sites have one

        return recurrence_by_peaks(gust, fit_peaks(site.peaks, site.peaks_per))
    mapped = standard_of(site.method).years(gust, site)
    if mapped is None:
        return None
    found, stated = mapped
    return Recurrence(found if found <= LONGER * stated else np.inf, "map", stated)
