"""A wider foot bends where it stands out: by hand, and never less for being wider."""

import pytest
from verdict_designs import design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.sizing.foot_bending import foot_bending

INCH, POUND_FORCE, FOOT = 0.0254, 4.4482216152605, 0.3048


def on_foot(width, ground="paving"):
    text = (
        f"[[part]]\nname = 'foot'\nshape = 'plate'\nlength = '{width} in'\nwidth = '{width} in'\n"
        "stock = '3/4 plywood'\nmaterial = 'softwood plywood'\n"
        "[[part]]\nname = 'body'\nshape = 'box'\non = 'foot'\nlength = '10 in'\nwidth = '10 in'\n"
        "height = '40 in'\ndensity = '35 lb/ft^3'\n"
    )
    return examine(read_text(design_text(text, ground=ground)))


def test_it_bends_by_its_weight_on_the_edge_by_hand():
    """On paving it turns over its very edge: M = W (width - 10 in)/2 over a strip that wide."""
    found = on_foot(30)
    bends = foot_bending(found, "foot")
    assert bends.overhang == pytest.approx(10 * INCH)
    weight = found.factors.hurting * found.structure.weight("heavy")
    assert bends.moment == pytest.approx(weight * 10 * INCH)
    assert bends.utilization == pytest.approx(bends.moment / bends.capacity)


def test_what_it_carries_is_the_published_value_adjusted():
    """APA D510: FbS across the grain, 3-ply, of the sheet's span rating.

    C_D 1.6, wet 0.75 (memory), no strip factor at 24 in and wider. The strip: the body's 10 in and
    one overhang of 20 in.
    """
    from yardfast.materials import sheets

    sheet = sheets.find_sheet("softwood plywood", 0.703 * INCH)
    bends = foot_bending(on_foot(50), "foot")
    assert bends.capacity == pytest.approx(sheet.bending[1] * 1.6 * 0.75 * 30 * INCH, rel=1e-6)


def test_a_foot_no_wider_than_its_body_does_not_bend():
    assert foot_bending(on_foot(10), "foot").moment == 0.0


def test_wider_bends_more():
    used = [foot_bending(on_foot(width), "foot").utilization for width in (16, 24, 36, 60)]
    assert used == sorted(used)
    assert used[-1] > 1.0
