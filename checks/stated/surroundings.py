"""The gust to act at in other surroundings: the same piece among houses, in the open, by water."""

from collections.abc import Mapping

from ...loads.methods import standard_of
from ..examination import Examination
from ..verdict import until

_EXPOSURES = ("C", "B", "D")
"""Open ground, houses and trees, shore: in the order in which people are told."""


def act_by_exposure(examination: Examination) -> Mapping[str, float | None]:
    """Return by exposure the forecast gust in m/s at which to act; None above 150 m/s.

    What a piece stands is a gust at itself; only the forecast that brings it differs. Where a part
    of it fails, that is the gust to act at until it is mended.
    """
    site, height = examination.site, examination.structure.height
    limits, standard = examination.limits, standard_of(site.method)
    own = until(examination)
    found: dict[str, float | None] = {}
    for exposure in _EXPOSURES:
        ratio = standard.gust_ratio(standard.in_surroundings(site, exposure), height)
        act = limits.act_by_ratio(ratio)
        if own is not None and own != limits.act:
            mended = own * limits.ratio / ratio
            act = mended if act is None else min(act, mended)
        found[exposure] = act
    return found
