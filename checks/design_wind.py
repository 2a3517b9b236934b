"""The site's wind on what stands in it: one wind for people, and all actions for the checks."""

from dataclasses import dataclass

import numpy as np

from ..design.shapes.shape import Array
from ..loads.actions import Actions, joined, minimum_actions, wind_actions
from ..loads.exposed import Exposed
from ..loads.methods import Method


@dataclass(frozen=True, eq=False)
class DesignWind:
    """The site's wind on the structure along the azimuths (D,): unfactored, SI units.

    ``force`` and ``uplift`` in N and ``force_height`` in m are the method's own, Case A for signs,
    the greatest for any gust up to the design's; ``area`` is the silhouette in m2, overlap once.
    ``pressure`` in Pa is at the structure's top, without directionality. ``gust_factor`` (D,) and
    ``directionality`` (bodies,) are what the method used.
    """

    azimuths: Array
    area: Array
    force: Array
    force_height: Array
    uplift: Array
    pressure: float
    gust_factor: Array
    directionality: Array


def design_wind(exposed: Exposed, method: Method) -> tuple[DesignWind, Actions]:
    """Return the site's wind for people, and all its actions (Q, D, C) for the checks.

    A round section may take more at a lower gust, so besides the design pressure each pressure
    below it at which a section switches is tried, just before the switch.
    """
    top = float(method.pressure(np.array(exposed.height)))
    ratio = method.pressure(exposed.pressure_height) / top
    switch = exposed.limit / ratio
    pressures = np.append(np.unique(switch[switch < top]), top)
    gust = method.gust(exposed.height, exposed.breadth)
    directionality = method.directionality(exposed.kinds)
    actions = wind_actions(
        exposed,
        pressures,
        ratio=ratio,
        directionality=directionality,
        gust=gust,
        above=switch < pressures[:, None],
    )
    plain = np.hypot(actions.force[..., 0, 0], actions.force[..., 0, 1])
    greatest = plain.argmax(axis=0)
    every = np.arange(len(exposed.azimuths))
    force = plain[greatest, every]
    tilting = np.hypot(actions.tilting[..., 0, 0], actions.tilting[..., 0, 1])[greatest, every]
    wind = DesignWind(
        azimuths=exposed.azimuths,
        area=exposed.silhouette.area,
        force=force,
        force_height=np.where(force > 0.0, tilting / np.where(force > 0.0, force, 1.0), 0.0),
        uplift=actions.uplift.max(axis=(0, 2)),
        pressure=top,
        gust_factor=gust,
        directionality=directionality,
    )
    if method.minimum is None:
        return wind, actions
    least = minimum_actions(exposed, method.minimum)
    return wind, joined(actions, _for_each_gust(least, len(pressures)))


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
