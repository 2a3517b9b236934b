"""Lateral values of NDS for nails, screws and bolts, to the printed digit.

Memory, unless said otherwise: none was compared with the printed standard. The rows of nails and
screws were kept because the equations give them, so they guard the code more than the memory; of
355 recalled rows 323 agreed. What disagreed is held in ``nds_lateral_doubtful`` below.
"""

import numpy as np
import pytest
from printed import rows

from yardfast.checks.timber.nds.dowel_bearing import ACROSS_GRAIN, dowel_bearing
from yardfast.checks.timber.nds.fastener_values import fastener_listing, value_of
from yardfast.checks.timber.nds.lateral import main_bearing_length, single_shear
from yardfast.materials import fasteners

INCH = 0.0254
POUND_FORCE = 4.4482216152605
PSI = POUND_FORCE / INCH**2
HALF = 0.5 + 1e-9


def pounds(row):
    """The tables give full penetration: 10 D of the nominal diameter, less half the tip."""
    D = float(row["D_in"]) * INCH
    nominal = D if row["fastener"] == "nail" else (0.060 + 0.013 * int(row["size"])) * INCH
    Fe = dowel_bearing(float(row["G"]), D)
    limits = single_shear(
        diameter=D,
        side_length=float(row["ts_in"]) * INCH,
        main_length=main_bearing_length(10.0 * nominal, 2.0 * nominal),
        side_bearing=Fe,
        main_bearing=Fe,
        bending_yield=float(row["Fyb_psi"]) * PSI,
        nominal_diameter=nominal,
    )
    return float(limits.value) / POUND_FORCE


def named(row):
    return f"{row['source'].split(' (')[0]} {row['size']} G {row['G']}"


LATERAL = rows("nds_lateral")
DOUBTFUL = rows("nds_lateral_doubtful")


@pytest.mark.parametrize("row", LATERAL, ids=named)
def test_nail_or_screw_is_the_printed_one(row):
    assert pounds(row) == pytest.approx(float(row["printed_lb"]), abs=HALF)


@pytest.mark.parametrize("row", [r for r in DOUBTFUL if r["reproduced"] == "yes"], ids=named)
def test_row_among_doubtful_ones_is_reproduced(row):
    assert pounds(row) == pytest.approx(float(row["printed_lb"]), abs=HALF)


@pytest.mark.parametrize("row", [r for r in DOUBTFUL if r["reproduced"] == "no"], ids=named)
def test_row_recalled_otherwise_is_still_not_reproduced(row):
    """32 rows, mostly of wood screws #9, #10 and #14: recalled 0.5 to 6 lb (one 10) off.

    The whole series of #14 lies 3 to 10 lb above what its root of 0.196 in gives, and rows of the
    same screws with other side members agree: the memory is doubted, not the equations.
    """
    apart = pounds(row) - float(row["printed_lb"])
    assert 0.5 < abs(apart) < 11.0


LISTED = fastener_listing()

BY_NAME = [
    pytest.param(row, one.fastener, id=f"{one.fastener.name}, {named(row)}")
    for row in LATERAL
    for one in LISTED
    if one.fastener.kind == row["fastener"]
    and one.fastener.name != "#4 wood screw"
    and abs(one.fastener.yielding_diameter / INCH - float(row["D_in"])) < 1e-6
    and (one.fastener.length or 1.0) >= (float(row["ts_in"]) + 10.0 * float(row["D_in"])) * INCH
    and one.fastener.bending_yield == pytest.approx(float(row["Fyb_psi"]) * PSI)
]


def test_trade_names_meet_the_table_at_many_places():
    assert len(BY_NAME) > 150


@pytest.mark.parametrize(("row", "fastener"), BY_NAME)
def test_a_trade_name_leads_to_the_printed_value(row, fastener):
    """A nail driven through the side member with its own length, a screw with 10 D."""
    found = value_of(fastener, float(row["G"]), float(row["ts_in"]) * INCH).lateral
    assert found / POUND_FORCE == pytest.approx(float(row["printed_lb"]), abs=HALF)


@pytest.mark.parametrize("row", rows("nds_dowel_bearing"), ids=lambda row: f"G {row['G']}")
def test_dowel_bearing_is_rounded_as_tabulated(row):
    """NDS 2018 Table 12.3.3, D under 1/4 in."""
    Fe = dowel_bearing(float(row["G"]), 0.131 * INCH) / PSI
    assert Fe == pytest.approx(float(row["Fe_psi"]), abs=1e-6)


def panel_sides():
    for row in rows("nds_derived"):
        if row["quantity"].startswith("panel side"):
            words = dict(pair.split("=") for pair in row["inputs"].split() if "=" in pair)
            mode = row["unit"].split()[-1]
            yield pytest.param(words, float(row["value"]), mode, id=row["inputs"])


@pytest.mark.parametrize(("words", "value", "mode"), list(panel_sides()))
def test_panel_nailed_on_wood(words, value, mode):
    """In the manner of NDS 2018 Table 12Q: computed apart from this code, no print at hand."""
    D = float(words["D"])
    limits = single_shear(
        diameter=D * INCH,
        side_length=float(words["t"]) * INCH,
        main_length=10.0 * D * INCH,
        side_bearing=float(words["Fe_s"]) * PSI,
        main_bearing=dowel_bearing(float(words["G"]), D * INCH),
        bending_yield=(100_000 if D <= 0.142 else 90_000) * PSI,
    )
    assert float(limits.value) / POUND_FORCE == pytest.approx(value, abs=0.005 + 1e-9)
    assert limits.mode == mode


BOLTS = {
    (0.55, 1.5): {
        0.5: (530, 330, 330, 250),
        0.625: (660, 400, 400, 280),
        0.75: (800, 460, 460, 310),
        0.875: (930, 520, 520, 330),
        1.0: (1060, 580, 580, 350),
    },
    (0.50, 1.5): {
        0.5: (480, 300, 300, 220),
        0.625: (600, 360, 360, 240),
        0.75: (720, 420, 420, 270),
        0.875: (850, 470, 470, 290),
        1.0: (970, 530, 530, 310),
    },
    (0.55, 3.5): {0.5: (660, 400, 470, 360)},
    (0.50, 3.5): {0.5: (610, 370, 430, 330)},
}
"""By G and thickness of the main member, 1 1/2 in side member: NDS 2018 Table 12A, to 10 lb."""


@pytest.mark.parametrize(
    ("G", "main", "D", "printed"),
    [
        pytest.param(G, main, D, values, id=f"NDS T12A D {D} G {G} main {main}")
        for (G, main), column in BOLTS.items()
        for D, values in column.items()
    ],
)
def test_bolt_along_and_across_the_grain_is_the_printed_one(G, main, D, printed):
    """Load along both, across the side, across the main, across both."""
    along, across = (dowel_bearing(G, D * INCH, angle) for angle in (0.0, ACROSS_GRAIN))
    limits = single_shear(
        diameter=D * INCH,
        side_length=1.5 * INCH,
        main_length=main * INCH,
        side_bearing=np.array([along, across, along, across]),
        main_bearing=np.array([along, along, across, across]),
        bending_yield=45_000 * PSI,
        grain_angle=np.array([0.0, ACROSS_GRAIN, ACROSS_GRAIN, ACROSS_GRAIN]),
    )
    assert limits.value / POUND_FORCE == pytest.approx(printed, abs=5.0)


def test_quarter_inch_lag_screw_bends_at_its_root():
    """NDS 2018 Table 12J, 1/4 in, side 1 1/2 in, G 0.50: 150 along, 110 across, to 10 lb.

    The nominal diameter is 1/4 in, the root 0.173: K_D K_theta of Table 12.3.1B note 1. Wood bears
    by the nominal one (12.3.3): by the root the value along the grain would be 140.
    """
    lag = fasteners.find_fastener("1/4 lag screw 4 in")
    angle = np.array([0.0, ACROSS_GRAIN])

    def pounds_by(bears):
        Fe = dowel_bearing(0.50, bears, angle)
        limits = single_shear(
            lag.yielding_diameter,
            1.5 * INCH,
            2.5 * INCH,
            Fe,
            Fe,
            lag.need("bending_yield"),
            angle,
            lag.diameter,
        )
        return limits.value / POUND_FORCE

    assert pounds_by(lag.diameter) == pytest.approx([150, 110], abs=5.0)
    assert round(float(pounds_by(lag.yielding_diameter)[0]), -1) == 140.0


def test_half_the_tip_of_a_nail_bears_nothing():
    """AWC Structural Wood Design Examples E2.2 (memory): 10d common, 2.25 in in the main piece.

    Tip 2 D, so l_m = 2.102 in. Without that Im, II and IIIm of its rows in references/verified
    would be 704, 235 and 244 lb.
    """
    nail = fasteners.find_fastener("10d common nail")
    lm = main_bearing_length(2.25 * INCH, 2.0 * nail.diameter)
    assert lm / INCH == pytest.approx(2.102, abs=0.0005)
