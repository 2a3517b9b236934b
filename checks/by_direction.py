"""The least gust that tips a piece as it stands, for each direction that the wind comes from."""

import numpy as np

from ..design.structure import Structure
from ..loads.exposed import bare
from ..loads.methods import air_density, method_of
from ..units.arrays import Array
from .anchoring.embedded_limits import give_way_pressures
from .anchoring.embedded_posts import Posts
from .examination import Examination
from .limits import GREATEST_GUST, Stage, stages
from .stability.standing import Standing
from .stability.tipping import tipping_pressures


def tipping_gusts(examination: Examination) -> Array:
    """Return gusts (D,) in m/s at the piece, along the wind's azimuths; infinite above 150 m/s.

    As the limits are: best estimate, typical weight, without anchors; a loose part that goes before
    the whole counts. The least of them is the limit.
    """
    structure, standing = examination.structure, examination.standing
    surfaces = [part.surface for part in structure.design.parts]
    each = bare(structure, surfaces, method_of(examination.site, structure.height))
    ranges = stages(standing, examination.exposed, slides=examination.posts is None)
    if examination.posts is None:
        least = _least(standing, ranges)
    else:
        least = _least_of_posts(examination.posts, structure, ranges)
    for loose in examination.loose:
        alone = loose.exposed(structure, examination.site.sheltering, each)
        least = np.minimum(least, _least(loose.standing, stages(loose.standing, alone, loose)))
    gusts = np.sqrt(2.0 * least / air_density(examination.site))
    return np.where(gusts <= GREATEST_GUST, gusts, np.inf)


def _least(standing: Standing, ranges: list[Stage]) -> Array:
    """Return the least pressure (D,) in Pa that tips; every range is tried, as in the limits."""
    return np.min(
        [
            tipping_pressures(standing, one.actions, "typical", one.low, one.high).min(axis=(1, 2))
            for one in ranges
        ],
        axis=0,
    )


def _least_of_posts(posts: Posts, structure: Structure, ranges: list[Stage]) -> Array:
    return np.min(
        [give_way_pressures(posts, structure, one.actions, one.low, one.high) for one in ranges],
        axis=0,
    )
