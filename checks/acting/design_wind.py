"""The site's wind on what stands in it: one wind for people, and all actions for the checks."""

import numpy as np

from ...loads.actions import Actions, body_actions, join_actions, minimum_actions, wind_actions
from ...loads.exposed import Exposed
from ...loads.methods import Method
from ...units.arrays import Array, distinct
from ...units.frozen import ByIdentity


class DesignWind(ByIdentity, frozen=True):
    """The site's wind on the structure along the azimuths (D,): unfactored, SI units.

    ``force`` and ``uplift`` in N and ``force_height`` in m are the method's own, Case A for signs,
    the greatest for any gust up to the design's. ``pressure`` in Pa is at the structure's top,
    without directionality. ``gust_factor`` (D,) and ``directionality`` (bodies,) are what the
    method used.
    """

    exposed: Exposed
    force: Array
    force_height: Array
    uplift: Array
    pressure: float
    gust_factor: Array
    directionality: Array

    @property
    def azimuths(self) -> Array:
        """Return the azimuths (D,) in degrees from which the wind comes."""
        return self.exposed.azimuths

    @property
    def area(self) -> Array:
        """Return the area (D,) in m2 of the silhouette, overlap once."""
        return self.exposed.silhouette.area


def design_wind(exposed: Exposed, method: Method) -> tuple[DesignWind, Actions]:
    """Return the site's wind for people, and all its actions (Q, D, C) for the checks."""
    blown = _Blown(exposed, method)
    actions = blown.actions()
    count = len(exposed.azimuths)
    sign_a = slice(0, None, len(exposed.cases))
    plain, tilts = (
        np.moveaxis(np.linalg.norm(each[..., sign_a, :], axis=-1), 1, -1).reshape(-1, count)
        for each in (actions.force, actions.tilting)
    )
    greatest, every = plain.argmax(axis=0), np.arange(count)
    force, tilting = plain[greatest, every], tilts[greatest, every]
    wind = DesignWind(
        exposed=exposed,
        force=force,
        force_height=np.where(force > 0.0, tilting / np.where(force > 0.0, force, 1.0), 0.0),
        uplift=actions.uplift.max(axis=(0, 2)),
        pressure=blown.top,
        gust_factor=blown.gust,
        directionality=blown.directionality,
    )
    return wind, blown.with_minimum(actions)


def design_actions(exposed: Exposed, method: Method) -> Actions:
    """Return all actions (Q, D, C) of the site's wind on what is exposed, for the checks."""
    blown = _Blown(exposed, method)
    return blown.with_minimum(blown.actions())


def wind_on_bodies(exposed: Exposed, method: Method) -> tuple[Array, tuple[str, ...]]:
    """Return the wrench (Q, D, C, bodies, 6) about the origin of the site's wind on each body.

    With the names of the cases (C,). The least wind of the standard is a case of its own.
    """
    blown = _Blown(exposed, method)
    each = blown.on_bodies()
    wrench, names = np.moveaxis(each.wrench, 1, 3), each.names
    if method.minimum is None:
        return wrench, names
    size = method.minimum * exposed.area
    force = np.einsum("bd,di->dbi", size, exposed.wind)
    up, twist = exposed.up.T, (size * exposed.arm).T
    none = np.zeros(force.shape[:2])
    least = np.stack(
        [force[..., 0], force[..., 1], none, -up * force[..., 1], up * force[..., 0], twist],
        axis=-1,
    )
    least = np.broadcast_to(
        least[None, :, None], (len(wrench), *least.shape[:1], 1, *least.shape[1:])
    )
    return np.concatenate([wrench, least], axis=2), (*names, "minimum")


class _Blown:
    """What a method makes of what is exposed.

    A round section may take more at a lower gust, so besides the design pressure each pressure
    below it at which a section switches is tried, just before the switch.
    """

    def __init__(self, exposed: Exposed, method: Method) -> None:
        self._exposed = exposed
        self._minimum = method.minimum
        self.top = float(method.pressure(np.array(exposed.height)))
        self._ratio = method.pressure(exposed.pressure_height) / self.top
        self._switch = exposed.limit / self._ratio
        self._pressures = np.append(distinct(self._switch[self._switch < self.top]), self.top)
        self.gust = method.gust(exposed.height, exposed.breadth)
        self.directionality = method.directionality(exposed.kinds)

    def actions(self) -> Actions:
        """Return the method's own actions."""
        return wind_actions(
            self._exposed,
            self._pressures,
            ratio=self._ratio,
            directionality=self.directionality,
            gust=self.gust,
            above=self._switch < self._pressures[:, None],
        )

    def on_bodies(self) -> Actions:
        """Return the method's own actions on each body by itself."""
        return body_actions(
            self._exposed,
            self._pressures,
            ratio=self._ratio,
            directionality=self.directionality,
            gust=self.gust,
            above=self._switch < self._pressures[:, None],
        )

    def with_minimum(self, actions: Actions) -> Actions:
        """Return actions with the least wind of the standard as a case of its own."""
        if self._minimum is None:
            return actions
        least = minimum_actions(self._exposed, self._minimum)
        return join_actions(actions, _for_each_gust(least, len(self._pressures)))


def _for_each_gust(actions: Actions, count: int) -> Actions:
    """Return actions (D, C) repeated for each of ``count`` gusts."""

    def repeat(values: Array) -> Array:
        return np.repeat(values[None], count, axis=0)

    return Actions(
        actions.azimuths,
        repeat(actions.force),
        repeat(actions.tilting),
        repeat(actions.twist),
        repeat(actions.uplift),
        repeat(actions.lifting),
        actions.names,
    )
