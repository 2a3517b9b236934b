"""Posts in the ground in words: which they are, how deep they stand, how deep they should."""

from collections.abc import Sequence
from math import isfinite

import numpy as np

from ...checks.anchoring.embedded_limits import DEEPEST_POSTS, depth_needed
from ...checks.anchoring.embedded_posts import Posts
from ...checks.examination import Examination
from ...checks.judged.build_steps import steps_of, up
from ...checks.judged.judging import Kind
from ...units import INCH
from ...units.frozen import replace
from ..wording.amounts import Amounts
from ..wording.remark import counted, joined

ROUND_IT = {False: 10 * INCH, True: 0.250}
"""Concrete round a post, across in m, by whether the design is metric: the hole that a common
auger drills (common practice)."""


def posts_said(examination: Examination, amounts: Amounts) -> str:
    """Return the posts in the ground and their depth: ``four posts 24 in deep``."""
    posts = _posts(examination)
    names = [examination.design.parts[part].name for part in dict.fromkeys(posts.part)]
    depths = sorted({round(float(depth), 6) for depth in posts.depth})
    deep = " and ".join(amounts.length(depth) for depth in depths)
    return f"{_counted(posts.part, names)}, {deep} in the ground"


def deeper(examination: Examination, amounts: Amounts) -> str:
    """Return how long the posts that give way should be, and how deep they should then stand."""
    failing = {
        check.subject
        for check in examination.checks
        if check.kind is Kind.EMBEDMENT and not check.passes
    }
    posts = _posts(examination)
    parts = [p for p in dict.fromkeys(posts.part) if examination.design.parts[p].name in failing]
    plain = _depths(examination, posts)
    across = ROUND_IT[amounts.metric]
    cast = _depths(examination, replace(posts, width=np.maximum(posts.width, across)))
    said: list[str] = []
    for part in parts:
        own = [n for n, of in enumerate(posts.part) if of == part]
        name = examination.design.parts[part].name
        bare, in_concrete = (max(each[n] for n in own) for each in (plain, cast))
        above = max(b.top for b in examination.structure.bodies if b.part == part)
        ways: list[str] = []
        if isfinite(bare):
            long, deep = _length(above, bare, amounts)
            ways.append(f"{long} long, {deep} of it in the ground")
        if posts.width[own].max() < across and isfinite(in_concrete):
            long, deep = _length(above, in_concrete, amounts)
            ways.append(f"{long} long, {deep} of it in concrete {amounts.length(across)} across")
        deepest = amounts.length(DEEPEST_POSTS)
        none = f"no depth up to {deepest} is enough for {name}: lower, or more posts"
        said.append(f"make {name} {', or '.join(ways)}" if ways else none)
    return joined(said)


def _length(above: float, depth: float, amounts: Amounts) -> tuple[str, str]:
    """Return how long a post is that stands ``above`` m high, and its ``depth``, as built."""
    step = steps_of("metric" if amounts.metric else "imperial").width
    built = up(depth, step) * step
    return amounts.length(above + built, "up"), amounts.width_needed(built)


def _depths(examination: Examination, posts: Posts) -> list[float]:
    found = depth_needed(posts, examination.structure, examination.actions, examination.factors)
    return [float(depth) for depth in found]


def _counted(parts: Sequence[int], names: Sequence[str]) -> str:
    return f"its {joined(names)}" if len(parts) == 1 else f"{counted(len(parts), 'post')}"


def _posts(examination: Examination) -> Posts:
    assert examination.posts is not None
    return examination.posts
