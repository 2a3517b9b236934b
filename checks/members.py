"""The strength of parts whose load is plain from the drawing: posts, blades, boards, panels."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np

from ..design.shapes.flat import Panel
from ..design.structure import Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from .blades import check_blades
from .boards import check_board, check_shell
from .borne import Borne, borne_by
from .local_wind import LocalWind
from .member_check import Member, Members, NotJudged
from .posts import check_posts
from .uprights import Posts, posts_of, touching


def posts_to_judge(structure: Structure, loads: Sequence[Borne] = ()) -> tuple[Posts, ...]:
    """Return the posts of a structure; of those that carry the same alike, the first group.

    What they carry counts the named ``loads``.
    """
    found: dict[tuple[object, ...], Posts] = {}
    for posts in posts_of(structure):
        carried = sorted(
            body.part for body, goes in zip(structure.bodies, posts.goes, strict=True) if goes
        )
        named = tuple(one.load.name for one in borne_by(loads, posts.goes))
        found.setdefault((posts.names, len(posts.bodies), posts.why_not, named, *carried), posts)
    return tuple(found.values())


def check_members(
    structure: Structure,
    posts: Iterable[tuple[Posts, Actions | None]],
    local: LocalWind,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
) -> Members:
    """Return the strength of every part that can be judged, and the others of these kinds.

    ``posts`` come with what they and their load take from the wind (Q, D, C); None for those that
    cannot be judged. ``basis`` is the site's, ``loads`` those that the design names. Of like copies
    the worst one is told.
    """
    found: list[Member | NotJudged] = []
    for group, actions in posts:
        if actions is None:
            one = NotJudged(group.names[0], group.why_not)
        else:
            carries = borne_by(loads, group.goes)
            one = check_posts(group, structure, actions, factors, basis, carries)
        found += [_named(one, name) for name in group.names]
    is_board = any(isinstance(body.shape, Panel) for body in structure.bodies)
    near = touching(structure) if is_board else np.zeros((0, 0), dtype=bool)
    for i in range(len(structure.bodies)):
        one = (
            check_blades(structure, i, local, factors, basis)
            or check_shell(structure, i, local, factors, basis)
            or (is_board and check_board(structure, i, near, local, factors, basis))
        )
        if one:
            found.append(one)
    return _worst_of_each(found)


def _named(one: Member | NotJudged, name: str) -> Member | NotJudged:
    """Return what was found of posts that share a load, for the part of that name."""
    if isinstance(one, NotJudged):
        return replace(one, name=name)
    return replace(one, name=name, check=replace(one.check, name=f"member: {name}"))


def _worst_of_each(found: Iterable[Member | NotJudged]) -> Members:
    judged: dict[str, Member] = {}
    others: dict[str, NotJudged] = {}
    for one in found:
        if isinstance(one, NotJudged):
            others.setdefault(one.name, one)
        elif one.name not in judged or _use(one) > _use(judged[one.name]):
            judged[one.name] = one
    return Members(tuple(judged.values()), tuple(others.values()))


def _use(one: Member) -> float:
    return np.inf if one.check.utilization is None else one.check.utilization
