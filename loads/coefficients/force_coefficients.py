"""Force coefficients of posts, towers, boxes and the like: ASCE/SEI 7 Fig. 29.4-1.

``h_over_D`` is the height of the stack's top above ground over the part's own least width at its
mid-height, of any array shape. The figure prints 1, 7 and 25: linear between, held beyond.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import not_negative, positive

SURFACES = {"smooth": "moderately smooth", "rough": "rough", "very rough": "very rough"}
"""What may be written of a round surface, and how the row of the figure begins."""

ROUND_LIMIT = 5.3
"""D sqrt(q_z) in m sqrt(Pa) above which the wind behind a round section narrows (Fig. 29.4-1)."""

_COLUMN = "Cf_hD"


def square_face(h_over_D: ArrayLike) -> Array:
    """Return Cf of a square section, wind normal to a face.

    ValueError when ``h_over_D`` is below 0. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-1.
    """
    return _along(_row("Square, wind normal to face"), h_over_D)


def square_diagonal(h_over_D: ArrayLike) -> Array:
    """Return Cf of a square section, wind along its diagonal, on the area that the wind sees.

    ValueError when ``h_over_D`` is below 0. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-1.
    """
    return _along(_row("Square, wind along diagonal"), h_over_D)


def hexagon_or_octagon(h_over_D: ArrayLike) -> Array:
    """Return Cf of a hexagonal or octagonal section, any wind, on the area that it sees.

    ValueError when ``h_over_D`` is below 0. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-1.
    """
    return _along(_row("Hexagonal or octagonal"), h_over_D)


def round_section(h_over_D: ArrayLike, surface: str, above_limit: ArrayLike) -> Array:
    """Return Cf of a round section.

    ``surface`` is "smooth", "rough" or "very rough" (ribs of 0 to 8 % of the diameter);
    ``above_limit`` (bool, broadcasts with ``h_over_D``) says whether D sqrt(q_z) is above
    5.3 m sqrt(Pa); up to there the surface does not matter.
    ValueError for another surface or when ``h_over_D`` is below 0.
    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-1.
    """
    if surface not in SURFACES:
        expected = ", ".join(f'"{word}"' for word in SURFACES)
        raise ValueError(f'surface: found "{surface}", expected one of {expected}')
    above = _along(_row("Round", SURFACES[surface]), h_over_D)
    below = _along(_row("Round", "all"), h_over_D)
    return np.where(above_limit, above, below)


def round_limit_pressure(D: ArrayLike) -> Array:
    """Return the velocity pressure in Pa, without Kd, at which a round section switches: (5.3/D)^2.

    ``D`` in m, any shape. ValueError when it is not above 0.
    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-1, D sqrt(q_z) = 5.3.
    """
    return np.asarray((ROUND_LIMIT / positive("D", D)) ** 2)


def ball() -> float:
    """Return Cf of a ball: a rough round section as high as wide, the same on both sides of 5.3.

    Judgement: ASCE 7 has no sphere, and measured rough spheres stand at 0.40 to 0.47, below it.
    """
    return float(round_section(1.0, "rough", True))


def between_face_and_diagonal(
    P_face: ArrayLike, P_diagonal: ArrayLike, phi: ArrayLike, phi_diagonal: ArrayLike
) -> Array:
    """Return the product P = Cf A of a rectangle, wind at ``phi`` off the normal of its face.

    P = P_face + (P_diagonal - P_face) sin^2(90 deg phi/phi_diagonal), with 0 <= phi <= phi_diagonal
    in rad, and ``P_face`` and ``P_diagonal`` in m2 (or m2 per m). All broadcast.
    Judgement: ASCE/SEI 7 Fig. 29.4-1 gives the two ends; this is smooth and flat at both.
    """
    face, diagonal = np.asarray(P_face, dtype=float), np.asarray(P_diagonal, dtype=float)
    turned = np.asarray(phi, dtype=float) / np.asarray(phi_diagonal, dtype=float)
    return face + (diagonal - face) * np.sin(0.5 * np.pi * turned) ** 2


def _along(row: tuple[Array, Array], h_over_D: ArrayLike) -> Array:
    return np.asarray(np.interp(not_negative("h/D", h_over_D), *row))


@cache
def _row(section: str, surface: str = "all") -> tuple[Array, Array]:
    """Return the printed h/D and Cf (3,) of the row that begins with these words."""
    row = next(
        row
        for row in references.table("wind/asce7_cf_chimneys_tanks").rows
        if row["cross_section"].startswith(section) and row["surface"].startswith(surface)
    )
    columns = [column for column in row if column.startswith(_COLUMN)]
    h_over_D = [float(column.removeprefix(_COLUMN)) for column in columns]
    return np.array(h_over_D), np.array([float(row[column]) for column in columns])
