"""What a buyer's page needs of a piece besides its verdict and the slots of every message."""

from collections.abc import Mapping

from ...checks.examination import Examination
from ...checks.holder import holder_of
from ...checks.sizing.anchor_pull import people_pull
from ...checks.stated.shortfalls import loads_not_stood, loose_off
from ...checks.stated.surroundings import act_by_exposure
from ...checks.tied import Way
from ...checks.verdict import Verdict
from ...design.file.record_table import Record
from ...loads.wind.site import Site
from ...materials import find_material as material
from ...units.frozen import ByIdentity
from ..drawings.set_out import SetOut, set_out
from ..messages import page_messages as messages
from ..told.added_words import added_said, only_with
from ..told.facts import Facts, facts_of
from ..told.held_words import one_word
from ..wording.amounts import Amounts
from ..wording.asked_wind import around, mapped, to_spare
from ..wording.dates import records_said
from .gate import not_ready


class SheetFacts(ByIdentity, frozen=True):
    """Slots of the page's messages, gathered once.

    ``unready`` is why it is not for sale, empty where it is. ``acts`` is the forecast gust to act
    at by exposure, m/s. ``wind`` is what it was worked out for, with ``around`` it, ``gust`` the
    same without, ``spare`` the reserve. ``weights`` are typical, light and heavy, kg, ``added``
    what of it was added and ``only_with`` what that buys. ``seams`` are the parts whose seams were
    checked, ``loads`` the named loads that it stands with their force in N, ``not_stood`` the
    others; ``loose`` the parts that come off. ``pushed`` is whether its anchors do for wind but not
    for people.
    """

    facts: Facts
    unready: str
    out: SetOut
    acts: Mapping[str, float | None]
    wind: str
    gust: str
    spare: str
    weights: tuple[float, float, float]
    weighed: bool
    added: str
    only_with: str
    seams: tuple[str, ...]
    loads: tuple[tuple[str, float], ...]
    not_stood: tuple[str, ...]
    loose: tuple[str, ...]
    anchor: str
    stakes_possible: bool
    sloping: bool
    wood: bool
    blades: bool
    pushed: bool
    records: tuple[str, ...]
    was_tested: bool

    @property
    def amounts(self) -> Amounts:
        """Return how amounts are shown."""
        return self.facts.amounts


def sheet_facts(found: Examination) -> SheetFacts:
    """Return the slots of the page of a design."""
    facts, design = facts_of(found), found.design
    records, weigh = design.several(Record), found.structure.mass
    not_stood, bare = loads_not_stood(found), found.without_added
    acts = act_by_exposure(found)
    return SheetFacts(
        facts=facts,
        unready=str(not_ready(found) or ""),
        out=set_out(found),
        acts=acts,
        wind=wind_of(found.site, facts.amounts, around(found.site)),
        gust=wind_of(found.site, facts.amounts, ""),
        spare=to_spare(found.site, planted=found.posts is not None),
        weights=(weigh("typical"), weigh("light"), weigh("heavy")),
        weighed=design.weighed is not None,
        added=added_said(found.added, facts.amounts),
        only_with=only_with(
            found.added, acts, acts if bare is None else act_by_exposure(bare), facts.amounts
        ),
        seams=tuple(one.row.part for one in found.fastened_seams),
        loads=tuple(
            (one.load.name, one.load.force) for one in found.loads if one.load.name not in not_stood
        ),
        not_stood=not_stood,
        loose=loose_off(found),
        anchor="" if found.posts is not None else one_word(holder_of(found)),
        stakes_possible=found.standing.ground.stakes_possible,
        sloping=bool(found.site.slope),
        wood=any(p.material and material(p.material).kind in _WOODEN for p in design.parts),
        blades=any(part.shape.wheel is not None for part in design.parts),
        pushed=people_pull(found) > found.remedies.stakes.pull,
        records=tuple(records_said(records, facts.amounts)),
        was_tested=any(record.kind != "weight" for record in records),
    )


_WOODEN = ("wood", "panel")


def wind_of(site: Site, amounts: Amounts, around: str) -> str:
    """Return the wind that a piece was worked out for, with what is ``around`` it, if given."""
    message = messages.WIND_ASKED.get(site.method, messages.WIND_OF_CODE)
    return message.format(
        wind=amounts.gust(site.wind, "near"),
        method=site.method,
        mapped=mapped(site),
        around=f", {around}" if around else "",
    )


def advice(verdict: Verdict, page: SheetFacts) -> messages.Advice:
    """Return what the page tells to do before it blows too hard, and whether it is too heavy."""
    stays = verdict.untied.stays_put
    if page.unready:
        return "mend", stays
    if page.facts.laid_down or page.facts.posts:
        return "laid" if page.facts.laid_down else "posts", False
    weighed = verdict.tied.ways[:1] in ((Way.WEIGHT,), (Way.WIDTH,))
    return "weigh" if weighed else "tie", stays
