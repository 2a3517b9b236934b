"""What would let a piece stand a load that its design names: anchors, or weight low in its foot."""

from functools import reduce

from ...loads.actions import join_actions
from ...statics.tables.anchor_table import AnchorRow
from ...units.frozen import ByIdentity, replace
from ..acting.borne import as_actions
from ..acting.given_loads import both_at_once
from ..anchoring.anchor_choice import (
    PLAINEST,
    AnchorChoice,
    Loaded,
    choose_anchors,
    places_for,
    set_as,
    suited,
    with_anchors,
)
from ..anchoring.anchored import anchor_pulls
from ..examination import Examination
from ..tied import most
from .as_built import built, without_its_own
from .laid_weight import least_weight
from .remedy import checks_needed, checks_pass


class UnderLoad(ByIdentity, frozen=True):
    """What lets a piece stand a named load, by itself and in the site's wind at once, each alone.

    ``anchors`` as they were chosen and checked, ``weight`` in kg low in its foot; None where none.
    ``pulls`` in N, straight up and sideways, are what any anchor at each of ``places`` is asked.
    """

    anchors: AnchorChoice | None
    weight: float | None
    places: int = 0
    pulls: tuple[float, float] = (0.0, 0.0)


def stands_with(found: Examination, name: str) -> UnderLoad:
    """Return what lets a piece stand the load of that name; nothing of one on posts."""
    if found.posts is not None:
        return UnderLoad(None, None)
    loaded = _loaded(found, name)
    weight = least_weight(found, most("weight laid low"), loaded)
    return UnderLoad(choose_anchors(loaded), weight, *_asked(loaded))


def anchored_against(found: Examination, name: str) -> AnchorRow | None:
    """Return the anchors with which a piece stands a named load, examined as any; None of one held.

    Nothing that passed before fails with them.
    """
    anchors = None if found.held or found.posts is not None else stands_with(found, name).anchors
    if anchors is None or anchors.row.where is None:
        return None
    design = with_anchors(found.design, anchors.row)
    then = built(found, f"anchors against {name}", 0, design)
    names = checks_needed(found) | {check.name for check in found.checks if check.subject == name}
    return anchors.row if checks_pass(then, names) else None


def _asked(loaded: Loaded) -> tuple[int, tuple[float, float]]:
    """Return at how many places anchors are asked how much in N, straight up and sideways."""
    fit = suited(loaded.ground, loaded.metric, PLAINEST)
    if not fit:
        return 0, (0.0, 0.0)
    row = set_as(places_for(loaded, "anchors")[0][1], fit[0])
    held = loaded.held_with(with_anchors(loaded.design, row))
    return len(held.points), anchor_pulls(held, loaded.standing, loaded.actions, loaded.factors)


def _loaded(found: Examination, name: str) -> Loaded:
    """Return a piece with nothing that holds it, under a load alone and in wind, factored."""
    used = found.factors
    load = next(as_actions(one.load) for one in found.loads if one.load.name == name)
    each = ((0.0, used.live), *used.companions)
    cases = [both_at_once(found.actions, by_wind, load, live) for by_wind, live in each]
    return replace(
        found.loaded,
        design=without_its_own(found.design),
        actions=reduce(join_actions, cases),
        factors=replace(used, wind=1.0),
    )
