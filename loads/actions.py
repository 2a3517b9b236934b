"""What a gust does to a structure: force, tilting, twist and uplift, by direction and case."""

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array
from ..units.frozen import ByIdentity
from .exposed import Exposed


class Actions(ByIdentity, frozen=True):
    """Forces of wind on the whole structure, any leading shape then (D, C): directions, cases.

    ``force`` (…, 2) in N and ``tilting`` (…, 2), the sum of force times height in N m; ``twist``
    about the origin in N m counter-clockwise; ``uplift`` in N and its first moments ``lifting``
    (…, 2) in N m. ``names`` (C,) tells the cases and ``azimuths`` (D,) in degrees the directions.
    """

    azimuths: Array
    force: Array
    tilting: Array
    twist: Array
    uplift: Array
    lifting: Array
    names: tuple[str, ...]

    @property
    def wrench(self) -> Array:
        """Return Fx, Fy, Fz in N and Mx, My, Mz in N m about the origin (…, D, C, 6): M = r x F."""
        return np.stack(
            [
                self.force[..., 0],
                self.force[..., 1],
                self.uplift,
                self.lifting[..., 1] - self.tilting[..., 1],
                self.tilting[..., 0] - self.lifting[..., 0],
                self.twist,
            ],
            axis=-1,
        )

    def times(self, factor: float) -> "Actions":
        """Return all actions multiplied by a factor."""
        return Actions(
            self.azimuths,
            self.force * factor,
            self.tilting * factor,
            self.twist * factor,
            self.uplift * factor,
            self.lifting * factor,
            self.names,
        )

    def direction_of(self, row: int) -> int:
        """Return the direction's index of a row of the actions taken one after another."""
        return row // len(self.names) % len(self.azimuths)

    def some(self, rows: NDArray[np.intp]) -> "Actions":
        """Return some rows (n,) of the actions taken one after another, each as a direction."""
        leading = self.uplift.ndim

        def of(values: Array) -> Array:
            return values.reshape(-1, 1, *values.shape[leading:])[rows]

        return Actions(
            self.azimuths[rows // self.uplift.shape[-1] % len(self.azimuths)],
            of(self.force),
            of(self.tilting),
            of(self.twist),
            of(self.uplift),
            of(self.lifting),
            ("",),
        )


def wind_actions(
    exposed: Exposed,
    pressure: Array,
    *,
    ratio: Array,
    directionality: Array,
    gust: Array,
    above: NDArray[np.bool_] | None = None,
) -> Actions:
    """Return the actions (…, D, C) of velocity pressures (…) in Pa at the structure's top.

    ``ratio`` (bodies,) is the pressure at each body over that at the top, ``directionality``
    (bodies,) its Kd and ``gust`` (D,) the gust effect factor. ``above`` (…, bodies) tells which
    round sections are beyond their limit; by default D sqrt(q) decides (ASCE/SEI 7 Fig. 29.4-1).
    The cases are those of signs under each case of what acts normal to tops and roofs.
    """
    size = _pushed(exposed, pressure, ratio, directionality, gust, above)
    lifted = exposed.up[:, None, :] + exposed.rise[:, None, None]
    vector = np.einsum("...bd,bdi->...bdi", size, exposed.along)
    force = np.einsum("...bdi,bsd->...dsi", vector, exposed.case)
    tilting = np.einsum("...bdi,bsd->...dsi", vector, lifted * exposed.case)
    turning = exposed.arm[:, None, :] + exposed.shift
    twist = np.einsum("...bd,bsd->...ds", size, turning * exposed.case)
    normal = np.einsum(
        "...b,bdvk->...dvk", pressure[..., None] * directionality, exposed.suction.terms
    )
    return _each_case(exposed, force, tilting, twist, normal * gust[:, None, None])


def body_actions(
    exposed: Exposed,
    pressure: Array,
    *,
    ratio: Array,
    directionality: Array,
    gust: Array,
    above: NDArray[np.bool_] | None = None,
) -> Actions:
    """Return the actions (…, bodies, D, C) on each body by itself, all about the same origin.

    Arguments as for ``wind_actions``, of which these are the terms: their sum over the bodies is
    it, case by case. ``.wrench`` holds each body's force and its line of action.
    """
    size = _pushed(exposed, pressure, ratio, directionality, gust, above)
    shape = (*size.shape, len(exposed.cases))
    sized = size[..., None] * np.swapaxes(exposed.case, 1, 2)
    force = sized[..., None] * exposed.along[:, :, None, :]
    up = (exposed.up + exposed.rise[:, None])[:, :, None, None]
    turning = exposed.arm[:, :, None] + np.swapaxes(exposed.shift, 1, 2)
    on_each = pressure[..., None, None] * directionality[:, None] * gust
    return _each_case(
        exposed,
        force,
        force * up,
        np.broadcast_to(sized * turning, shape),
        on_each[..., None, None] * exposed.suction.terms,
    )


def _pushed(
    exposed: Exposed,
    pressure: Array,
    ratio: Array,
    directionality: Array,
    gust: Array,
    above: NDArray[np.bool_] | None,
) -> Array:
    """Return the level force (…, bodies, D) in N on each body before sign cases."""
    at_body = pressure[..., None] * ratio
    if above is None:
        above = at_body > exposed.limit
    product = np.where(above[..., None], exposed.above, exposed.below)
    return at_body[..., None] * directionality[:, None] * gust * product


def minimum_actions(exposed: Exposed, pressure: float) -> Actions:
    """Return the actions (D, 1) of a pressure in Pa on the whole silhouette at its centroid."""
    face = exposed.silhouette
    size = pressure * face.area
    force = (size[:, None] * exposed.wind)[:, None, :]
    none = np.zeros((len(size), 1))
    return Actions(
        exposed.azimuths,
        force,
        force * face.up[:, None, None],
        -(size * face.side)[:, None],
        none,
        np.zeros((len(size), 1, 2)),
        ("minimum",),
    )


def join_actions(first: Actions, second: Actions) -> Actions:
    """Return the cases of both, those of ``second`` after those of ``first``."""
    return Actions(
        first.azimuths,
        np.concatenate([first.force, second.force], axis=-2),
        np.concatenate([first.tilting, second.tilting], axis=-2),
        np.concatenate([first.twist, second.twist], axis=-1),
        np.concatenate([first.uplift, second.uplift], axis=-1),
        np.concatenate([first.lifting, second.lifting], axis=-2),
        first.names + second.names,
    )


def _each_case(
    exposed: Exposed, force: Array, tilting: Array, twist: Array, normal: Array
) -> Actions:
    """Return the sign cases (…, D, S) under each case of what acts normal (…, D, V, 8) in turn."""
    cases = [
        (
            force + normal[..., v, None, 0:2],
            tilting + normal[..., v, None, 3:5],
            twist + normal[..., v, None, 7],
            np.zeros(twist.shape) + normal[..., v, None, 2],
            np.zeros(force.shape) + normal[..., v, None, 5:7],
        )
        for v in range(normal.shape[-2])
    ]
    names = tuple(
        ", ".join((sign, *acts)) for acts in exposed.suction.names for sign in exposed.cases
    )
    return Actions(
        exposed.azimuths,
        np.concatenate([each[0] for each in cases], axis=-2),
        np.concatenate([each[1] for each in cases], axis=-2),
        np.concatenate([each[2] for each in cases], axis=-1),
        np.concatenate([each[3] for each in cases], axis=-1),
        np.concatenate([each[4] for each in cases], axis=-2),
        names,
    )
