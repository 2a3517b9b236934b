"""Odds against closed forms, the single check, and designs that are built and checked anew."""

from math import exp, log, sqrt

import numpy as np
import pytest
from scipy import stats

from yardfast import materials
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.odds.odds import Pieces, odds
from yardfast.checks.odds.sampling import sample_blocks
from yardfast.checks.odds.weights import kind_of
from yardfast.checks.spread import INPUTS, Spread, published
from yardfast.design.faults import DesignError
from yardfast.loads.wind.how_often import years_between
from yardfast.materials import grounds
from yardfast.statics.tables.joint_table import JointRow
from yardfast.statics.tables.seam_table import SeamRow
from yardfast.units.frozen import replace

BLOCK = """\
[design]
name = 'Mounting block'
units = 'metric'
[site]
method = 'forecast'
wind = '22 m/s'
exposure = 'open'
ground = 'paving'
[[part]]
name = 'block'
shape = 'solid'
sides = 4
bottom = '300 mm'
top = '300 mm'
height = '900 mm'
material = 'spruce-pine-fir'
"""
"""On hard ground, with no part that the wind lifts: what it does is in closed form."""

WEIGHT = ("density", "thickness", "moisture")
GUSTS = "gusts = { 2 = '18 m/s', 10 = '24 m/s', 50 = '30 m/s' }\n"


def spreads(**said: float | dict[str, object]) -> str:
    """Return a table for every input: what is said of it, else that it does not vary."""
    rows: list[str] = []
    for name in INPUTS:
        its = said.get(name, 0.0)
        given = {"spread": its} if isinstance(its, float) else its
        lines = [f"{key} = {value!r}" for key, value in given.items()]
        rows.append("\n".join(["[[odds]]", f"name = '{name}'", *lines]))
    return "\n".join(rows) + "\n"


def with_gusts(text: str) -> str:
    return text.replace("[[part]]", f"{GUSTS}[[part]]", 1)


@pytest.mark.parametrize("name", ["light-tower", "fingerpost", "three-pieces", "pinwheel"])
def test_without_variation_it_is_the_single_check(name: str) -> None:
    """A tower on a lawn that gives, a post in the ground, loose pieces, a ball that switches."""
    text = read(f"examples/{name}.toml").text
    found, told = odds(read_text(f"{text}\n{spreads()}"), samples=4)
    limits = found.limits
    for gusts, limit in (
        (told.tipping, limits.forecast_tipping),
        (told.sliding, limits.forecast_sliding),
    ):
        expected = None if limit is None else pytest.approx(limit, rel=1e-12)
        assert gusts.p5 == gusts.p50 == gusts.p95 == expected
    first = min(g for g in (limits.forecast_tipping, limits.forecast_sliding) if g is not None)
    if told.joint is None or (told.joint.p50 or 1e9) > first:
        assert told.chances["any"] == float(first < told.asked)
    assert told.shares == ()


def test_a_lognormal_margin_in_closed_form() -> None:
    """V goes with sqrt(W/c)/g, so that ln V is normal; Ang and Tang, Probability Concepts."""
    share = {"density": 0.3, "coefficient": 0.25, "gust": 0.12}
    design = read_text(
        BLOCK
        + spreads(
            density={"spread": share["density"], "shape": "lognormal"},
            coefficient=share["coefficient"],
            gust=share["gust"],
        )
    )
    found, told = odds(design, samples=2**16)
    sigma = {name: sqrt(log(1.0 + cov**2)) for name, cov in share.items()}
    mean = (
        log(found.limits.forecast_tipping or 0.0)
        - 0.25 * sigma["density"] ** 2
        + 0.25 * sigma["coefficient"] ** 2
        + 0.5 * sigma["gust"] ** 2
    )
    parts = {
        "density": 0.25 * sigma["density"] ** 2,
        "coefficient": 0.25 * sigma["coefficient"] ** 2,
        "gust": sigma["gust"] ** 2,
    }
    spread = sqrt(sum(parts.values()))
    for gust, part in ((told.tipping.p5, 0.05), (told.tipping.p50, 0.5), (told.tipping.p95, 0.95)):
        assert gust == pytest.approx(exp(mean + spread * stats.norm.ppf(part)), rel=2e-3)
    tips = stats.norm.cdf((log(told.asked) - mean) / spread)
    assert told.chances["tips"] == pytest.approx(tips, abs=1e-3)
    shares = dict(told.shares)
    for name, part in parts.items():
        assert shares[name] == pytest.approx(part / spread**2, abs=0.01)
    assert told.shares[0][0] == max(parts, key=lambda name: parts[name])


def test_a_normal_margin_in_closed_form() -> None:
    """It tips where r c - w > 0, r the asked pressure over the limit's: Cornell 1969."""
    by_weight, by_shape = 0.12, 0.2
    design = read_text(
        BLOCK + spreads(density=by_weight, coefficient={"spread": by_shape, "shape": "normal"})
    )
    found, told = odds(design, samples=2**16)
    ratio = (told.asked / (found.limits.forecast_tipping or 0.0)) ** 2
    beta = (1.0 - ratio) / sqrt(by_weight**2 + (ratio * by_shape) ** 2)
    assert 0.05 < stats.norm.cdf(-beta) < 0.95
    assert told.chances["tips"] == pytest.approx(stats.norm.cdf(-beta), abs=1e-3)


@pytest.mark.parametrize("name", ["light-tower", "pinwheel"])
def test_designs_read_and_checked_anew_give_the_same(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Materials of another density, ground of another strength: each piece built and checked anew.

    An independent sampler of few pieces: none of the arrays, tables or bounds of the odds. The
    pinwheel's ball switches its coefficient with the gust.
    """
    text = read(f"examples/{name}.toml").text + JUST_WEIGHT_AND_GROUND
    pieces = Pieces.of(examine(read_text(text)))
    chances = np.random.default_rng(7).random((4, len(INPUTS)))
    inputs, gusts = pieces.gusts(chances)
    find = grounds.find_ground
    for k in range(len(chances)):
        ground = _changed(find(pieces.found.site.ground), inputs.friction[k], inputs.soil[k])
        heavier = {kind: float(factor[k]) for kind, factor in inputs.heavier.items()}
        monkeypatch.setattr(grounds, "find_ground", lambda _, ground=ground: ground)
        limits = examine(_heavier(read_text(text), heavier)).limits
        assert gusts[0, k] == pytest.approx(limits.forecast_tipping, rel=1e-9)
        assert gusts[1, k] == pytest.approx(limits.forecast_sliding, rel=1e-9)


JUST_WEIGHT_AND_GROUND = """
[[odds]]
name = 'coefficient'
spread = 0
[[odds]]
name = 'gust'
spread = 0
"""


def _changed(ground: grounds.Ground, friction: float, soil: float) -> grounds.Ground:
    rubs = {
        kind: replace(one, coefficient=one.coefficient * float(friction))
        for kind, one in ground.friction.items()
    }
    rating = ground.ratings["yield pressure"]
    yields = {"yield pressure": replace(rating, value=rating.value * float(soil))}
    return replace(ground, friction=rubs, ratings={**ground.ratings, **yields})


def _heavier(design, factors):
    """Return a design, unjoined, whose parts weigh so much more by the kind of their material."""
    parts = []
    for part in design.parts:
        kind = kind_of(part, design.weighed is not None)
        heavy = part
        if part.material is not None and kind in factors:
            found = materials.find_material(part.material)
            density = found.typical * factors[kind]
            contact = part.contact or found.contact
            heavy = replace(part, material=None, density=density, contact=contact)
        parts.append(heavy)
    fastened = (JointRow, SeamRow)
    tables = {kind: table for kind, table in design.tables.items() if kind not in fastened}
    return replace(design, parts=tuple(parts), tables=tables)


def test_a_seed_gives_the_same_again_and_another_about_the_same() -> None:
    design = read_text(BLOCK)
    _, one = odds(design, samples=4000, seed=3)
    _, same = odds(design, samples=4000, seed=3)
    _, other = odds(design, samples=4000, seed=4)
    assert one == same
    assert one.tipping != other.tipping
    assert one.tipping.p50 == pytest.approx(other.tipping.p50, rel=0.01)


def test_the_error_falls_as_that_of_points_spread_evenly() -> None:
    """Of a smooth answer: faster than n^-0.85, where chance draws give n^-0.5 (Owen 1997)."""
    pieces = Pieces.of(examine(read_text(BLOCK)))
    by = published()
    weight = {name: by[name]["wood"] for name in WEIGHT}
    points = (np.arange(200000) + 0.5) / 200000
    exact = (
        log(pieces.found.limits.forecast_tipping or 0.0)
        + 0.5 * sum(float(np.log(one.factor(points)).mean()) for one in weight.values())
        - 0.5 * float(np.log(by["coefficient"][""].factor(points)).mean())
        - float(np.log(by["gust"][""].factor(points)).mean())
    )
    sizes, errors = [2**8, 2**10, 2**12, 2**14], []
    for n in sizes:
        off = []
        for seed in range(4):
            for _, chances in sample_blocks(8 * n, seed):
                off.append(float(np.log(pieces.gusts(chances)[1][0]).mean()) - exact)
        errors.append(float(np.sqrt(np.mean(np.square(off)))))
    rate = np.polyfit(np.log(sizes), np.log(errors), 1)[0]
    assert rate < -0.85
    assert errors[-1] < 1e-4


def test_the_standard_error_tells_how_far_the_answer_is_off() -> None:
    design = read_text(BLOCK + spreads(gust=0.2))
    found, told = odds(design, samples=64)
    sigma = sqrt(log(1.04))
    mean = log(found.limits.forecast_tipping or 0.0) + 0.5 * sigma**2
    exact = stats.norm.cdf((log(told.asked) - mean) / sigma)
    off, error = [], []
    for seed in range(40):
        _, one = odds(design, samples=64, seed=seed)
        off.append(one.chances["tips"] - exact)
        error.append(one.errors["asked"] or 0.0)
    assert 0.5 < np.sqrt(np.mean(np.square(off)) / np.mean(np.square(error))) < 2.0


def test_a_year_by_the_gusts_of_the_place() -> None:
    """The year's greatest gust passes V with 1 - exp(-1/T): Gumbel's tail, ln T linear in V."""
    found, told = odds(read_text(with_gusts(BLOCK) + spreads()), samples=8, years=25)
    limits = found.limits
    first = min(limits.forecast_tipping or 150.0, limits.forecast_sliding or 150.0)
    T = float(years_between(first, [2, 10, 50], [18.0, 24.0, 30.0]))
    year = 1.0 - exp(-1.0 / T)
    assert told.per_year == pytest.approx(year, rel=1e-3)
    assert told.over_years == pytest.approx(1.0 - (1.0 - year) ** 25, rel=1e-3)
    _, without = odds(read_text(BLOCK + spreads()), samples=8)
    assert without.per_year is None
    assert without.over_years is None


def test_what_falls_over_by_itself_does_so_every_year() -> None:
    """On a slope of 20 degrees a block three times as high as wide lies beyond its foot."""
    text = with_gusts(BLOCK).replace("ground =", "slope = '20 deg'\nground =")
    _, told = odds(read_text(text), samples=64, years=50)
    assert told.tipping.p95 == 0.0
    assert told.chances["tips"] == 1.0
    assert told.per_year == told.over_years == pytest.approx(1.0)


def test_what_is_rarer_than_can_be_told_is_told_as_a_bound() -> None:
    """Gusts known for 50 years tell no chance below once in 100 (the basis of how often)."""
    heavy = with_gusts(BLOCK).replace("spruce-pine-fir", "granite")
    _, told = odds(read_text(heavy), samples=64)
    assert told.bounded
    assert told.per_year == pytest.approx(1.0 - exp(-1.0 / 100.0))


@pytest.mark.parametrize(
    ("rows", "key", "expected"),
    [
        ("name = 'friction'\nspread = -0.1", "spread", "from 0"),
        ("name = 'friction'\nlow = 1.2\nhigh = 1.1", "high", "more than 'low', which is 1.2"),
        ("name = 'density'\nspread = 0.05\nlow = 3.0", "low", "bounds between which"),
        ("name = 'frction'", "name", "one of 'density'"),
        ("name = 'soil'\nshape = 'gaussian'", "shape", "one of 'normal'"),
        ("name = 'soil'\ncov = 0.2", "cov", "one of name, spread"),
        ("spread = 0.2", "name", ""),
    ],
)
def test_a_distribution_that_cannot_be_is_one_clear_fault(rows, key, expected) -> None:
    with pytest.raises(DesignError) as wrong:
        read_text(f"{BLOCK}[[odds]]\n{rows}\n")
    (fault,) = wrong.value.faults
    assert fault.key == key
    assert expected in fault.expected


def test_an_input_given_twice_is_one_fault() -> None:
    with pytest.raises(DesignError) as wrong:
        read_text(BLOCK + "[[odds]]\nname = 'soil'\n" * 2)
    assert len(wrong.value.faults) == 1


@pytest.mark.parametrize("samples", [0, -3])
def test_no_samples_is_refused(samples: int) -> None:
    with pytest.raises(ValueError, match="samples"):
        odds(read_text(BLOCK), samples=samples)


@pytest.mark.parametrize("shape", ["normal", "lognormal", "uniform"])
def test_spreads_have_the_mean_and_deviation_that_they_say(shape: str) -> None:
    points = (np.arange(400000) + 0.5) / 400000
    factor = Spread(shape, 0.15, mean=1.1).factor(points)
    assert factor.mean() == pytest.approx(1.1, rel=1e-4)
    assert factor.std() == pytest.approx(0.165, rel=1e-3)
    cut = Spread(shape, 0.15, low=0.9, high=1.2).factor(points)
    assert (cut.min(), cut.max()) == (pytest.approx(0.9, abs=1e-3), pytest.approx(1.2, abs=1e-3))
