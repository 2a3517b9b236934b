"""The relations against printed tables of the ground: slopes, toes, stakes, deadmen, ropes."""

import re
from itertools import pairwise

import numpy as np
import printed
import pytest
import shapely

from yardfast import references
from yardfast.checks.anchoring import guys
from yardfast.checks.anchoring.capacity import deadman, slab_bolts, stakes
from yardfast.checks.stability.contact import caps
from yardfast.checks.stability.standing import Standing
from yardfast.design.model import Design, Part
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import GRAVITY, build_structure
from yardfast.loads.wind.site import Site
from yardfast.materials import grounds, guy_lines

INCH, FOOT, LBF = 0.0254, 0.3048, 0.45359237 * GRAVITY
PSF = LBF / FOOT**2


@pytest.mark.parametrize("ratio", [1, 2, 3, 4])
def test_slope_takes_what_the_table_says(ratio):
    """W(b cos - h_g sin)/(W b), statics: a block whose middle lies ``ratio`` half-widths up."""
    table = printed.table("slope_reduction")
    site = Site(method="gust", wind=20.0, ground="paving")
    block = Part("block", Box(2.0, 2.0, 2.0 * ratio), density=600.0)
    structure = build_structure(Design("block", "metric", (block,), tables={Site: site}))
    kept = []
    for degrees in table.numbers("slope_deg"):
        level, leaning = (
            Standing(structure, grounds.find_ground("paving"), np.radians(slope))
            for slope in (0.0, degrees)
        )
        hold = leaning.hold("typical", leaning.reach) / level.hold("typical", level.reach)
        kept.append(hold.min())
    assert kept == pytest.approx(table.numbers(f"hg_over_b_{ratio}").tolist(), abs=0.0005)


def test_toe_carries_what_the_table_says():
    """Meyerhof 1953, B' = B - 2e: the cap whose centroid lies under the resultant."""
    table = printed.table("toe_pressure_ratio")
    B, L = 1.2, 0.7
    found = caps(shapely.box(0, 0, B, L), np.array([[1.0, 0.0]]))
    e = table.numbers("e_over_B") * B
    area = found.area_about((B / 2 - e)[:, None])[:, 0]
    assert B * L / area == pytest.approx(table.numbers("qmeyerhof_over_qavg"), abs=0.0005)


def test_linear_toe_pressures_are_those_of_a_trapezoid_or_a_triangle():
    """Theoretical Foundation Engineering 4.10: 1 + 6 e/B, beyond the kern 4/(3 (1 - 2 e/B))."""
    table = printed.table("toe_pressure_ratio")
    e = table.numbers("e_over_B")
    toe = np.where(e <= 1 / 6, 1 + 6 * e, 4 / (3 * (1 - 2 * e)))
    assert toe == pytest.approx(table.numbers("qmax_over_qavg_linear"), abs=0.0005)
    contact = np.minimum(3 * (0.5 - e), 1.0)
    assert contact == pytest.approx(table.numbers("contact_fraction"), abs=0.0005)


def test_probe_classes_follow_one_another():
    """8-class soil classification sheet 2000: each class is softer than the one before it."""
    rows = printed.table("eight_class_probe_table").rows[1:]
    spans = [[float(n) for n in re.findall(r"\d+", row["probe_in_lb"])] for row in rows]
    assert [span[0] for span in spans[:-1]] == [750, 600, 500, 400, 300, 200, 100]
    assert all(harder[0] >= softer[-1] for harder, softer in pairwise(spans))
    blows = [float(re.findall(r"\d+", row["spt_N"])[-1]) for row in rows]
    assert blows == sorted(blows, reverse=True)


def _tested():
    table = printed.table("stake_tests")
    return [row for row in table.rows if row["diameter_mm"] and row["force_N"]]


@pytest.mark.parametrize("row", _tested(), ids=lambda row: f"{row['source']}: {row['anchor']}"[:70])
def test_no_tested_stake_held_less_than_is_allowed(row):
    wet = "saturated" in row["soil"]
    d, length = float(row["diameter_mm"]) / 1000, float(row["embedment_mm"]) / 1000
    strength = stakes.sideways_strength(d, length, wet)
    assert strength / 3.0 < float(row["force_N"])
    implied = float(row["force_N"]) / (d * length * 1e4)
    assert implied == pytest.approx(float(row["implied_N_per_cm2_of_d_times_l"]), abs=0.05)


def test_strength_of_stakes_lies_within_the_tests():
    dry = [
        float(row["implied_N_per_cm2_of_d_times_l"])
        for row in _tested()
        if "saturated" not in row["soil"]
    ]
    per_area = stakes.sideways_strength(0.025, 0.8) / (0.025 * 0.8 * 1e4)
    assert min(dry) < per_area < max(dry)
    # InTents, 1 June 2009, on the Univ. of Illinois study: about half when saturated
    assert stakes.sideways_strength(0.025, 0.8, True) / (0.025 * 0.8 * 1e4) == per_area / 2


@pytest.mark.parametrize(
    ("feet", "degrees", "psf"),
    [(3, 45, 950), (3, 14, 1500), (5, 26.5, 3600), (6, 18.5, 5800), (7, 45, 5100)],
    ids=lambda value: f"TM 5-5420-278-10 Table 9 {value}",
)
def test_deadman_holds_what_the_table_prints(feet, degrees, psf):
    power = deadman.holding_power(feet * FOOT, np.radians(degrees))
    assert power / PSF == pytest.approx(psf, abs=0.5)
    assert deadman.holding_power(feet * FOOT, np.radians(degrees), True) == power / 2


def test_shallow_deadman_falls_as_the_square_of_depth():
    """The table's own fall from 6 to 3 ft: 3,800 to 950 and 6,000 to 1,500 psf."""
    printed = references.table("ground/deadman_holding_power_psf")
    for column in ("pull_at_45_psf", "pull_at_14_psf"):
        psf = printed.numbers(column)
        assert psf[3] / psf[0] == pytest.approx(4.0)
    assert deadman.holding_power(1.5 * FOOT, np.radians(45)) / PSF == pytest.approx(950 / 4)


@pytest.mark.parametrize(
    ("name", "pounds"),
    [
        ("galvanised cable 1/16 in", 480),
        ("galvanised cable 3/32 in", 920),
        ("galvanised cable 1/8 in", 2000),
        ("galvanised cable 3/16 in", 4200),
        ("galvanised cable 1/4 in", 7000),
        ("stainless cable 1/8 in", 1760),
        ("nylon rope 1/4 in", 1486),
        ("polyester rope 1/4 in", 1650),
        ("polypropylene rope 1/4 in", 1250),
        ("manila rope 1/4 in", 540),
    ],
    ids=lambda value: f"FAA AC 43.13-1B Table 7-3, rope tables {value}",
)
def test_lines_break_at_the_lowest_printed_load(name, pounds):
    assert guy_lines.find_line(name).breaking / LBF == pytest.approx(pounds, abs=0.5)


@pytest.mark.parametrize("line", guy_lines.all_lines(), ids=lambda line: line.name)
def test_lines_work_below_the_published_shares_of_their_breaking_load(line):
    """Rope: 15 to 25 percent of break; sign codes: cables and guys at most one fifth."""
    share = guys.allowable(line) / line.breaking
    assert share <= (0.15 if line.of == "rope" else 0.20)
    # nor below one twelfth, the most cautious table, when dry
    assert share >= line.wet_share / 12.0


def test_breakout_in_metric_and_in_pounds_is_one():
    """ACI 318-19 prints kc 17 in lb, in and psi where ACI 318M-19 prints 7 in N, mm and MPa."""
    psi = LBF / INCH**2
    pounds = slab_bolts.breakout_strength(2.25 * INCH, 2500 * psi) / LBF
    assert pounds / (np.sqrt(2500) * 2.25**1.5) == pytest.approx(17, abs=0.5)
