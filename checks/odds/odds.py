"""How likely a piece tips, slides or asks too much of a joint: many pieces, one examination."""

from collections.abc import Mapping
from itertools import product

import numpy as np

from ...design.model import Design
from ...loads.methods import air_density, standard_of
from ...loads.yearly import yearly
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from ..examination import Examination, examine
from ..limits import GREATEST_GUST
from ..odds_table import spreads_of
from ..spread import INPUTS, Spread, Spreads
from .gives import FreeStanding, bodies
from .joints_give import JointsGive, joints_give
from .sampling import REPEATS, sample_blocks
from .shares import Shares
from .varied import Varied, varied_inputs
from .weights import BY_KIND, MEASURED, groups

SAMPLES = 100_000
_YEARS = 10
SEED = 1
PERCENTILES = (5.0, 50.0, 95.0)
"""Of a hundred pieces like it so many have given way at a lower gust."""

_END = 1.0e-8


class Gusts(ByValue, frozen=True):
    """Forecast gusts in m/s by which 5, 50 and 95 of 100 pieces have given way; None above 150."""

    p5: float | None
    p50: float | None
    p95: float | None


class Odds(ByValue, frozen=True):
    """How likely a piece gives way, untied, and what that rests on.

    ``tipping``, ``sliding`` and ``joint`` (None without joints) are forecast gusts. ``chances`` in
    the ``asked`` forecast gust in m/s: that it ``"tips"``, ``"slides"``, asks of a ``"joint"`` more
    than its book allows, or ``"any"`` of these. ``per_year`` and ``over_years`` are those of any,
    None without gusts of the place; ``bounded`` where they are the least that can be told.
    ``errors`` are standard errors of ``"asked"``, ``"year"`` and ``"years"``. ``shares`` is by
    input how much of what varies in the first gust that gives comes from it, greatest first.
    """

    tipping: Gusts
    sliding: Gusts
    joint: Gusts | None
    first_joint: str | None
    asked: float
    chances: Mapping[str, float]
    per_year: float | None
    over_years: float | None
    bounded: bool
    errors: Mapping[str, float | None]
    shares: tuple[tuple[str, float], ...]
    spreads: Spreads
    kinds: tuple[str, ...]
    samples: int
    seed: int
    years: int

    @property
    def varying(self) -> tuple[tuple[str, str, Spread], ...]:
        """Return what varies of this piece: input, kind of material, spread."""
        kinds = {"wood" if kind == MEASURED else kind for kind in self.kinds}
        own = {name for kind in self.kinds for name in BY_KIND[kind]}
        used = {
            name: name in own or (not self.spreads[name].keys() - {""} and self._counts(name))
            for name in INPUTS
        }
        return tuple(
            (name, kind, one)
            for name in INPUTS
            if used[name]
            for kind, one in self.spreads[name].items()
            if not kind or kind in kinds
        )

    def _counts(self, name: str) -> bool:
        """Return whether an input that is of no material counts here."""
        if name == "climate":
            return self.per_year is not None
        return name != "fastening" or self.joint is not None


def odds(
    design: Design, samples: int = SAMPLES, seed: int = SEED, years: int = _YEARS
) -> tuple[Examination, Odds]:
    """Return the examination of a design, and the odds of pieces like it, without anchors.

    ValueError where ``samples`` or ``years`` is below 1; DesignError as the check.
    """
    if samples < 1 or years < 1:
        raise ValueError(f"samples, years: found {min(samples, years)}, expected 1 or more")
    found = examine(design)
    return found, count_odds(Pieces.of(found), samples, seed, years)


class Pieces(ByIdentity, frozen=True):
    """A piece as it may turn out: what each may do, for inputs drawn from ``spreads``."""

    found: Examination
    spreads: Spreads
    kinds: tuple[str, ...]
    bodies: tuple[FreeStanding, ...]
    joints: JointsGive | None
    density: float
    ratio: float

    @classmethod
    def of(cls, found: Examination) -> "Pieces":
        """Return the pieces that an examined one may turn out to be."""
        site, structure = found.site, found.structure
        spreads, own = spreads_of(found.design), groups(structure)
        low, high = _END, 1.0 - _END
        corners = np.full((16, len(INPUTS)), 0.5)
        ends = [INPUTS.index(name) for name in ("density", "thickness", "moisture", "soil")]
        corners[:, ends] = list(product((low, high), repeat=4))
        loose = tuple(zip(found.loose, found.at.loose_exposed, strict=True))
        extremes = varied_inputs(spreads, own.kinds, corners)
        return cls(
            found,
            spreads,
            own.kinds,
            bodies(found.standing, found.exposed, loose, found.posts, extremes),
            joints_give(found),
            air_density(site),
            found.limits.ratio,
        )

    def gusts(self, chances: Array) -> tuple[Varied, Array]:
        """Return the inputs of some chances (n, inputs), and the forecast gusts (3, n) in m/s.

        Those at which each piece tips, slides and uses up its first joint, infinite if never.
        """
        inputs = varied_inputs(self.spreads, self.kinds, chances)
        each = [body.pressures(inputs) for body in self.bodies]
        tipping = np.min([tips for tips, _ in each], axis=0)
        sliding = np.min([slides for _, slides in each], axis=0)
        joint = np.full(inputs.count, np.inf)
        if self.joints is not None:
            own = groups(self.found.structure)
            heavier = own.weight(inputs.heavier).force / own.force.sum()
            joint = self.joints.at(heavier, inputs)
        pressures = np.stack([tipping, sliding, joint])
        return inputs, np.sqrt(2.0 / self.density * pressures) / (self.ratio * inputs.gust)

    @property
    def asked(self) -> float:
        """Return the forecast gust in m/s that is asked for."""
        site = self.found.site
        gust = standard_of(site.method).open_gust(site)
        return site.wind / self.ratio if gust is None else gust


def count_odds(pieces: Pieces, samples: int, seed: int, years: int) -> Odds:
    """Return the odds of so many pieces."""
    gusts, shares = np.empty((3, samples)), Shares()
    repeats = min(REPEATS, samples)
    asked, a_year, in_years = (np.zeros(repeats) for _ in range(3))
    counts, place = np.zeros(repeats), yearly(pieces.found.site)
    done, given = 0, np.zeros(3)
    for k, chances in sample_blocks(samples, seed):
        inputs, found = pieces.gusts(chances)
        first, n = found.min(axis=0), len(chances)
        gusts[:, done : done + n] = found
        done, counts[k] = done + n, counts[k] + n
        asked[k] += float((first < pieces.asked).sum())
        given += (found < pieces.asked).sum(axis=1)
        local = first if place is None else first / inputs.climate
        shares.take(chances, np.log(np.clip(local, _CALMEST, GREATEST_GUST)))
        if place is not None:
            chance = place.chance(local)
            a_year[k] += float(chance.sum())
            in_years[k] += float((1.0 - (1.0 - chance) ** years).sum())
    least = 0.0 if place is None else place.least
    year, over = (_mean(each, counts) for each in (a_year, in_years))
    return Odds(
        tipping=_percentiles(gusts[0]),
        sliding=_percentiles(gusts[1]),
        joint=None if pieces.joints is None else _percentiles(gusts[2]),
        first_joint=None if pieces.joints is None else pieces.joints.first,
        asked=pieces.asked,
        chances={
            "any": _mean(asked, counts),
            **{name: float(m) / samples for name, m in zip(_WAYS, given, strict=True)},
        },
        per_year=None if place is None else max(year, least),
        over_years=None if place is None else max(over, 1.0 - (1.0 - least) ** years),
        bounded=year < least,
        errors={
            "asked": _error(asked, counts),
            "year": None if place is None else _error(a_year, counts),
            "years": None if place is None else _error(in_years, counts),
        },
        shares=shares.of(),
        spreads=pieces.spreads,
        kinds=pieces.kinds,
        samples=samples,
        seed=seed,
        years=years,
    )


_WAYS = ("tips", "slides", "joint")
_CALMEST = 1.0e-3


def _mean(sums: Array, counts: Array) -> float:
    return float(sums.sum() / counts.sum())


def _error(sums: Array, counts: Array) -> float | None:
    """Return the standard error of a mean over repeats, by how these differ; None of one alone."""
    if len(counts) < 2:
        return None
    return float((sums / counts).std(ddof=1) / np.sqrt(len(counts)))


def _percentiles(gusts: Array) -> Gusts:
    """Return the gusts by which so many of a hundred have given way."""
    found = np.percentile(gusts, PERCENTILES, method="inverted_cdf")
    return Gusts(*(float(gust) if gust <= GREATEST_GUST else None for gust in found))
