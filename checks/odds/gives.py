"""At which gust many pieces tip and slide that differ in their inputs alone."""

from collections.abc import Sequence
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from ...loads.actions import Actions
from ...loads.exposed import Exposed
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from ..anchoring.embedded_limits import give_way_pressures
from ..anchoring.embedded_posts import Posts, asked_of
from ..limits import Stage, stages
from ..loose import Loose
from ..stability.sliding import sliding_pressures
from ..stability.standing import DeadLoad, Standing
from .tipping import Tipping
from .varied import Varied
from .weights import Groups, groups


class FreeStanding(ByIdentity, frozen=True):
    """What stands by itself: a whole piece, or what is loose on it, in the winds of each stage.

    ``extremes`` are the inputs at the corners between which all others lie.
    """

    standing: Standing
    stages: Sequence[Stage]
    extremes: Varied
    posts: Posts | None = None

    def pressures(self, inputs: Varied) -> tuple[Array, Array]:
        """Return the pressures (n,) in Pa at which each piece tips and slides, infinite if never.

        The ground enters by what it bears over what weighs on it: soil s times as strong is worth
        a weight over s, at pressures over s. So is a coefficient, since force goes with it.
        """
        weight = self._groups.weight(inputs.heavier)
        tipping = np.full(inputs.count, np.inf)
        sliding = np.full(inputs.count, np.inf)
        for k, stage in enumerate(self.stages):
            low, high = stage.low * inputs.coefficient, stage.high * inputs.coefficient
            if self.posts is None:
                tips = self._tips(k, weight, inputs.soil, low, high)
                sliding = np.minimum(sliding, self._slides(k, weight, inputs.friction, low, high))
            else:
                tips = self._gives_way(k, weight, inputs.soil, low, high)
            tipping = np.minimum(tipping, tips)
        return tipping / inputs.coefficient, sliding / inputs.coefficient

    def _tips(self, k: int, weight: DeadLoad, soil: Array, low: Array, high: Array) -> Array:
        over_soil = DeadLoad(weight.force / soil, weight.centre)
        return soil * self._tipping[k].pressures(over_soil, low / soil, high / soil)

    def _slides(self, k: int, weight: DeadLoad, friction: Array, low: Array, high: Array) -> Array:
        stage = self._sliding[k]
        each = DeadLoad(weight.force[:, None, None], weight.centre[:, None, None])
        share = friction[:, None, None] * stage.share
        bounds = low[:, None, None], high[:, None, None]
        q = sliding_pressures(self.standing, stage.actions, each, share, *bounds)
        return q.min(axis=(1, 2))

    def _gives_way(self, k: int, weight: DeadLoad, soil: Array, low: Array, high: Array) -> Array:
        assert self.posts is not None
        heavier = weight.force / self._groups.force.sum()
        q = give_way_pressures(
            self.posts,
            self.standing.structure,
            self._giving_way[k],
            low[:, None, None],
            high[:, None, None],
            heavier[:, None, None],
            soil[:, None, None],
        )
        return q.min(axis=-1)

    @cached_property
    def _groups(self) -> Groups:
        return groups(self.standing.structure)

    @cached_property
    def _tipping(self) -> tuple[Tipping, ...]:
        weight = self._groups.weight(self.extremes.heavier)
        centre = weight.centre.mean(axis=0)
        away = np.linalg.norm((weight.centre - centre)[:, :2], axis=1)
        over_soil = weight.force / self.extremes.soil
        heavy = float(over_soil.max())
        light = max(float(over_soil.min()), heavy / _WIDEST)
        found = [Tipping(self.standing, s, light, heavy, centre, 0.0) for s in self.stages]
        off = float(away.max())
        return tuple(replace(one, off=off if off > _STILL else 0.0) for one in found)

    @cached_property
    def _giving_way(self) -> tuple[Actions, ...]:
        """Return the winds of each stage that may be the first to move a post."""
        assert self.posts is not None
        found: list[Actions] = []
        for stage in self.stages:
            asked = asked_of(self.posts, stage.actions, 1.0)
            used = self.posts.used(asked.force, asked.moment, 1.0)
            rows = _undominated(used.reshape(-1, used.shape[-1]))
            found.append(stage.actions.some(rows))
        return tuple(found)

    @cached_property
    def _sliding(self) -> tuple[Stage, ...]:
        """Return the stages with those winds alone that may be the first to make it slide."""
        return tuple(_first_to_slide(stage, self.standing.slope == 0.0) for stage in self.stages)


_WIDEST = 1.0e4
"""The heaviest weight over the lightest of a table at most."""

_STILL = 1.0e-9
"""A centre of mass that moves less (m) stands still."""


def bodies(
    standing: Standing,
    exposed: Exposed,
    loose: Sequence[tuple[Loose, Exposed]],
    posts: Posts | None,
    extremes: Varied,
) -> tuple[FreeStanding, ...]:
    """Return the whole piece and each loose part of it, as the limits of one check try them."""
    whole = FreeStanding(standing, stages(standing, exposed, slides=posts is None), extremes, posts)
    return (
        whole,
        *(
            FreeStanding(one.standing, stages(one.standing, alone, one), extremes)
            for one, alone in loose
        ),
    )


def _first_to_slide(stage: Stage, level: bool) -> Stage:
    """Return a stage without the winds that no more than others push, for their grip, and lift.

    Whatever a piece weighs and the friction is, these do not make it slide before another does:
    f k (W cos - q U) = q H + W sin, over k. On a slope grip counts by itself as well.
    """
    share, lift = stage.share.ravel(), stage.actions.uplift.ravel()
    size = np.hypot(stage.actions.force[..., 0], stage.actions.force[..., 1]).ravel()
    push = np.where(share > 0.0, size / np.where(share > 0.0, share, 1.0), np.inf)
    rows = _undominated(np.stack([push, lift, np.zeros_like(lift) if level else -share], axis=1))
    return replace(stage, actions=stage.actions.some(rows), share=stage.share.reshape(-1, 1)[rows])


def _undominated(figures: Array) -> NDArray[np.intp]:
    """Return which rows (k,) of figures (n, m) no other is as great in all of, but for rounding."""
    kept: list[int] = []
    nearly = _NEARLY * np.abs(figures)
    for k in np.lexsort(-figures.T[::-1]).tolist():
        if not (figures[kept] >= figures[k] - nearly[k]).all(axis=1).any():
            kept.append(k)
    return np.array(sorted(kept), dtype=np.intp)


_NEARLY = 1.0e-12
