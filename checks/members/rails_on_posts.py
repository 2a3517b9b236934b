"""What each post takes of a rail over three of them or more, span by span and in one piece.

Beside equal shares, which hold of a rail that bends little where posts do. Each way balances what
comes down; a post is judged by the worst of them all.
"""

from collections.abc import Sequence

import numpy as np

from ...design.structure import Structure
from ...loads.actions import Blow
from ...loads.combinations import Factors
from ..borne import Borne
from ..joints.joint_places import Place
from .carried_down import Carried, carry
from .load_path import LoadPath, load_path
from .over_places import places_of
from .posts import Share, Spanned
from .uprights import Posts

_AS_THEY_ARE = Factors(0.0, 0.0, 1.0, 1.0, "", 1.0, 1.0)
"""Wind alone, then weight alone, then each load alone, none with a factor."""


def spanned_by(
    structure: Structure,
    places: Sequence[Place],
    groups: Sequence[Posts],
    blow: Blow,
    basis: str,
    loads: Sequence[Borne] = (),
) -> dict[tuple[int, ...], tuple[Spanned, ...]]:
    """Return by the bodies of posts what each way leaves them; nothing where no rail spans three.

    Nothing either where what they carry does not come down on them by the holds of each piece.
    ``places`` are the joints where they stand, ``blow`` the wind on some of the bodies alone.
    """
    wanted = [one for one in groups if len(one.bodies) > 2 and not one.why_not]
    if not wanted:
        return {}
    path = load_path(structure, places)
    found: dict[tuple[int, ...], tuple[Spanned, ...]] = {}
    for posts in wanted:
        carries = [i for i in np.flatnonzero(posts.goes).tolist() if i not in posts.bodies]
        if not any(places_of(path, i) for i in carries) or not _comes_down(path, posts, carries):
            continue
        named = [one for one in loads if one.body in carries]
        carried = carry(structure, path, posts.bodies, blow, _AS_THEY_ARE, basis, named)
        count = len(carried.sets) // 3
        found[posts.bodies] = tuple(
            _spanned(path, carried, posts, n * count, named) for n in (1, 2)
        )
    return found


def _comes_down(path: LoadPath, posts: Posts, carries: Sequence[int]) -> bool:
    """Return whether all that posts carry is held, in the end, by them alone."""
    known = {*posts.bodies, *carries}
    return all(
        i in path.order and path.of(i) and all(hold.by in known for hold in path.of(i))
        for i in carries
    )


def _spanned(
    path: LoadPath, carried: Carried, posts: Posts, first: int, named: Sequence[Borne]
) -> Spanned:
    """Return what one way leaves each post; its sets begin with number ``first``.

    They are wind, wind again, weight alone, and each named load twice; then all together.
    """
    shares = {
        one.load.name: _steady(_shares(path, carried, posts, first + 3 + 2 * n))
        for n, one in enumerate(named)
    }
    return Spanned(
        _shares(path, carried, posts, first),
        _steady(_shares(path, carried, posts, first + 2)),
        shares,
        carried.azimuths,
        carried.cases,
    )


def _shares(path: LoadPath, carried: Carried, posts: Posts, s: int) -> list[Share]:
    """Return what each post takes at its foot in set ``s``: its own, and what comes down on it."""
    found: list[Share] = []
    for i, (x, y) in zip(posts.bodies, posts.places, strict=True):
        foot = np.array([x, y, posts.foot])
        force = carried.own[i].force[s]
        moment = carried.own[i].moment[s] - np.cross(foot, force)
        for k, hold in enumerate(path.holds):
            if hold.by == i and k in carried.arrives:
                passed, rest = carried.arrives[k]
                force = force + passed[s].sum(axis=-2)
                moment = moment + np.cross(hold.points - foot, passed[s]).sum(axis=-2) + rest[s]
        longer = carried.sets[s].longer
        bends = np.stack([moment[..., 1], -moment[..., 0]], axis=-1)
        found.append(Share(bends / longer, force[..., :2] / longer, force[..., 2] / longer))
    return found


def _steady(shares: list[Share]) -> list[Share]:
    """Return what is the same in every gust, from every side, once (1, 1, 1)."""
    return [
        Share(one.moment[:1, :1, :1], one.force[:1, :1, :1], one.up[:1, :1, :1]) for one in shares
    ]
