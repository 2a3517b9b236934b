"""Posts in the ground, as data: which they are, how deep they stand, how deep they should."""

from collections.abc import Iterator
from enum import StrEnum
from math import isfinite

import numpy as np

from ...units import INCH
from ...units.arrays import Array
from ...units.frozen import replace
from ..anchoring.embedded_limits import DEEPEST_POSTS, depth_needed
from ..anchoring.embedded_posts import Posts
from ..examination import Examination
from ..judged.build_steps import steps_of, up
from ..judged.finding import Amount, Finding, FindingSlot, Several
from ..judged.judging import Kind

ROUND_IT = {"imperial": 10 * INCH, "metric": 0.250}
"""Concrete round a post, across in m, by the design's units: the hole that a common auger drills
(common practice)."""


class Planted(StrEnum):
    """What is found of posts in the ground."""

    ONE = "one post, by its name"
    SEVERAL = "several posts"
    DEEPER = "how long and deep one should be"
    NO_DEPTH = "no depth does"
    IN_EARTH = "so long in earth"
    IN_CONCRETE = "so long in concrete"


def planted(found: Examination) -> Finding | None:
    """Return the posts in the ground and their depth; None where it stands on none."""
    posts = found.posts
    if posts is None:
        return None
    names = [found.design.parts[part].name for part in dict.fromkeys(posts.part)]
    depths = sorted({round(float(depth), 6) for depth in posts.depth})
    slots: dict[str, FindingSlot] = {
        "names": tuple(names),
        "posts": Several(len(posts.part), ("post",)),
        "deep": tuple(Amount(depth, "length") for depth in depths),
    }
    return Finding(Planted.ONE if len(posts.part) == 1 else Planted.SEVERAL, slots)


def deeper(found: Examination) -> tuple[Finding, ...]:
    """Return how long the posts that give way should be, and how deep they should then stand."""
    posts = found.posts
    if posts is None or not found.needs_anchors:
        return ()
    short = {c.subject for c in found.checks if c.kind is Kind.EMBEDMENT and not c.passes}
    across = ROUND_IT[found.design.units]
    cast = replace(posts, width=np.maximum(posts.width, across))
    plain, in_concrete = (_needed(found, each) for each in (posts, cast))
    said: list[Finding] = []
    for part in dict.fromkeys(posts.part):
        name = found.design.parts[part].name
        if name not in short:
            continue
        own = [n for n, of in enumerate(posts.part) if of == part]
        above = max(body.top for body in found.structure.bodies if body.part == part)
        depths = {Planted.IN_EARTH: plain[own].max()}
        if posts.width[own].max() < across:
            depths[Planted.IN_CONCRETE] = in_concrete[own].max()
        step = steps_of(found.design.units).width
        ways = tuple(_ways(depths, above, across, step))
        slots: dict[str, FindingSlot] = {"name": name, "ways": ways}
        slots["deepest"] = Amount(DEEPEST_POSTS, "length")
        said.append(Finding(Planted.DEEPER if ways else Planted.NO_DEPTH, slots))
    return tuple(said)


def _ways(
    depths: dict[Planted, float], above: float, across: float, step: float
) -> Iterator[Finding]:
    """Yield how long a post is that stands ``above`` m high, as built, by how it is set."""
    for what, depth in depths.items():
        if isfinite(depth):
            built = up(depth, step) * step
            yield Finding(
                what,
                {
                    "long": Amount(above + built, "length", "up"),
                    "deep": Amount(built, "width_needed"),
                    "across": Amount(across, "length"),
                },
            )


def _needed(found: Examination, posts: Posts) -> Array:
    return depth_needed(posts, found.structure, found.actions, found.factors)
