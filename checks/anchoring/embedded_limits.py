"""What posts in the ground bear at most: the gust and the push that move them, and the depth."""

import numpy as np

from ...design.structure import Structure
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units import FOOT
from ...units.arrays import Array
from ...units.frozen import replace
from .embedded_posts import Posts, asked_of, lean_moment

DEEPEST_POSTS = 12.0 * FOOT
"""No post is asked to stand deeper (m): beyond it the relation counts no more pressure."""

_HALVINGS = 40


def give_way_pressures(
    posts: Posts,
    structure: Structure,
    unit: Actions,
    low: float | Array,
    high: float | Array,
    heavier: float | Array = 1.0,
    soil: float | Array = 1.0,
) -> Array:
    """Return the least pressure (…, D) in Pa within low..high at which a post gives way, or inf.

    ``unit`` holds the actions (D, C) of 1 Pa. What is used grows in a straight line with pressure,
    from what the weight's lean alone uses. ``heavier`` (…, 1, 1) multiplies that lean and ``soil``
    (…, 1, 1) what the ground bears: those of many pieces at once.
    """
    asked = asked_of(posts, unit, 1.0)
    a_pascal = posts.used(asked.force, asked.moment, 1.0)
    lean = np.full(len(posts.part), lean_moment(posts, structure) / len(posts.part))
    by_lean = posts.used(np.zeros_like(lean), lean, 1.0)
    left = np.maximum(np.asarray(soil)[..., None] - np.asarray(heavier)[..., None] * by_lean, 0.0)
    q = np.where(a_pascal > 0.0, left / np.where(a_pascal > 0.0, a_pascal, 1.0), np.inf)
    q = q.min(axis=-1)
    return np.where(q <= high, np.maximum(q, low), np.inf).min(axis=-1)


def push_that_gives_way(posts: Posts, structure: Structure, height: float) -> float:
    """Return the level push in N at ``height`` m at which the posts together give way.

    What the weight's lean uses of them is not left for it.
    """
    each = np.full(len(posts.part), 1.0 / len(posts.part))
    lean = posts.used(0.0 * each, lean_moment(posts, structure) * each, 1.0)
    left = np.maximum(1.0 - lean, 0.0)
    return float((left / posts.used(each, each * height, 1.0)).min())


def depth_needed(posts: Posts, structure: Structure, actions: Actions, factors: Factors) -> Array:
    """Return how deep in m each post (n,) has to stand for what it is asked, found by halving.

    Infinite where ``DEEPEST_POSTS`` does not do.
    """
    asked = asked_of(posts, actions, factors.wind)
    lean = factors.hurting * lean_moment(posts, structure) / len(posts.part)
    low, high = np.zeros(len(posts.part)), np.full(len(posts.part), DEEPEST_POSTS)
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        deep = replace(posts, depth=middle)
        used = deep.used(asked.force, asked.moment + lean, factors.soil)
        holds = used.max(axis=tuple(range(used.ndim - 1))) <= 1.0
        low, high = np.where(holds, low, middle), np.where(holds, middle, high)
    return np.where(high < DEEPEST_POSTS, high, np.inf)
