"""What sheets carry, against printed tables and against plates worked out by series."""

import numpy as np
import pytest

from yardfast.checks.plates import walls
from yardfast.checks.plates.strip_strength import strip_strength
from yardfast.checks.plates.strips import carrying
from yardfast.checks.timber.nds.member_strength import sheet_bending
from yardfast.materials import lumber, plastic, sheets

INCH, FOOT, POUND = 0.0254, 0.3048, 4.4482216152605
PSI, PSF = 6894.757293168, 47.88025898


def span_moment(load, span):
    """Statics: w s^2/8, with which strips are held against plates here."""
    return load * span**2 / 8.0


MOMENT = POUND * INCH / FOOT
STIFFNESS = POUND * INCH**2 / FOOT

M9_2_1 = {
    # ASD/LRFD Manual (American Wood Council) Table M9.2-1, read in a copy: three plies and OSB,
    # EI along, EI across, FbS along, FbS across
    "24/0": ((66_000, 3_600, 250, 54), (60_000, 11_000, 300, 97)),
    "24/16": ((86_000, 5_200, 320, 64), (78_000, 16_000, 385, 115)),
    "32/16": ((125_000, 8_100, 370, 92), (115_000, 25_000, 445, 165)),
    "40/20": ((250_000, 18_000, 625, 150), (225_000, 56_000, 750, 270)),
    "48/24": ((440_000, 29_500, 845, 225), (400_000, 91_500, 1_000, 405)),
}
THICK = {"24/0": 0.354, "24/16": 0.418, "32/16": 0.451, "40/20": 0.578, "48/24": 0.703}


@pytest.mark.parametrize("rating", M9_2_1, ids=lambda rating: f"M9.2-1 {rating}")
def test_sheets_carry_what_the_manual_prints(rating):
    for material, printed in zip(("softwood plywood", "OSB"), M9_2_1[rating], strict=True):
        sheet = sheets.find_sheet(material, THICK[rating] * INCH)
        found = np.array([*sheet.stiffness, *sheet.bending])
        units = np.array([STIFFNESS, STIFFNESS, MOMENT, MOMENT])
        np.testing.assert_allclose(found / units, printed, rtol=1e-12)


def test_rolling_shear_is_what_structural_one_is_printed_over():
    """48/24, Structural I: 420 along in four layers, 1.4 times; 250 across in five (D510)."""
    sheet = sheets.find_sheet("softwood plywood", 0.703 * INCH)
    along, across = (value * FOOT / POUND for value in sheet.shear)
    assert along == pytest.approx(420.0 / 1.4)
    assert across == pytest.approx(250.0)


@pytest.mark.parametrize(("rating", "span"), [("32/16", 16.0), ("40/20", 20.0), ("48/24", 24.0)])
def test_even_load_by_the_formula_of_the_panel_specification(rating, span):
    """w = 96 FbS/l^2, psf and in, on one or two spans (APA D510 4.5, from memory)."""
    sheet = sheets.find_sheet("softwood plywood", THICK[rating] * INCH)
    load = 96.0 * M9_2_1[rating][0][2] / span**2 * PSF * 1.6 * 0.75
    capacity = sheet_bending(sheet, 24.0 * INCH, "service", across=False)
    assert span_moment(load, span * INCH) == pytest.approx(float(capacity), rel=1e-6)


def test_thin_plywood_is_far_below_what_breaks_it():
    """Wood Handbook Table 12-1: structural plywood breaks at 33.72 to 42.61 MPa (seen)."""
    for inches in (0.225, 0.354, 0.451, 0.703):
        sheet = sheets.find_sheet("softwood plywood", inches * INCH)
        stress = sheet.bending[0] / ((inches * INCH) ** 2 / 6.0)
        assert 33.72e6 / 8.0 < stress < 33.72e6 / 2.1


def test_thin_boards_take_the_values_of_lumber_and_thinner_ones_none():
    """NDS Supplement 4A footnote 2, as the American Wood Council explains it (seen)."""
    board = lumber.find_boards("western redcedar", 0.75 * INCH)
    assert (board.grade, board.bending / PSI) == ("stud", pytest.approx(550.0))
    assert board.size_factor == 1.0
    assert lumber.find_boards("western redcedar", 0.5 * INCH) is None
    assert lumber.find_boards("steel", 0.75 * INCH) is None


def test_acrylic_is_taken_as_the_weaker_sort():
    """Makers: 750 psi for extruded, 1,500 psi for cast sheet, under loads that stay (seen)."""
    sheet = plastic.find_plastic("acrylic")
    strip = strip_strength(sheet, 3.0e-3, 0.3, False, "service")
    assert float(strip.moment) == pytest.approx(0.3 * 9.0e-6 / 6.0 * 750.0 * PSI)
    assert plastic.find_plastic("PVC") is None


ROARK = {1.0: 0.2874, 1.2: 0.3762, 1.4: 0.4530, 1.6: 0.5172, 1.8: 0.5688, 2.0: 0.6102, 3.0: 0.7134}


@pytest.mark.parametrize("ratio", ROARK)
def test_strips_ask_no_less_of_a_plate_than_plate_theory(ratio):
    """Roark's Formulas, simply supported rectangle under even load: beta q b^2/t^2 (memory)."""
    b, t, q = 0.4, 0.003, 500.0
    stress = ROARK[ratio] * q * b**2 / t**2
    strip = float(span_moment(q, b)) / (t**2 / 6.0)
    assert strip == pytest.approx(0.75 * q * b**2 / t**2)
    assert stress <= strip


def plate(a, b, Dx, Dy, H, terms=61):
    """Return the greatest moments along and across the grain of a plate under 1 Pa: Navier."""
    m, n = np.arange(1, terms, 2)[:, None], np.arange(1, terms, 2)[None]
    w = 16.0 / (np.pi**6 * m * n)
    w = w / (Dx * m**4 / a**4 + 2.0 * H * (m * n) ** 2 / (a * b) ** 2 + Dy * n**4 / b**4)
    at = np.linspace(0.0, 1.0, 41)[1:-1]
    over_x, over_y = np.sin(np.pi * np.outer(at, m[:, 0])), np.sin(np.pi * np.outer(n[0], at))
    Mx = over_x @ (Dx * (np.pi * m / a) ** 2 * w) @ over_y
    My = over_x @ (Dy * (np.pi * n / b) ** 2 * w) @ over_y
    return np.abs(Mx).max(), np.abs(My).max()


SHEETS = [("softwood plywood", inches) for inches in (0.225, *THICK.values())]
SHEETS += [("OSB", inches) for inches in THICK.values()]


@pytest.mark.parametrize("ratio", [1.0, 1.3, 1.6, 2.0, 3.0])
@pytest.mark.parametrize(("material", "inches"), SHEETS)
def test_the_better_way_of_strips_asks_no_less_than_an_orthotropic_plate(material, inches, ratio):
    """Held all round: Navier's series, G of 90,000 psi and 180,000 for OSB (PDS, memory)."""
    sheet = sheets.find_sheet(material, inches * INCH)
    Dx, Dy = sheet.stiffness
    G = (180_000.0 if material == "OSB" else 90_000.0) * PSI
    H = 2.0 * G * (inches * INCH) ** 3 / 12.0
    b = 0.6
    Mx, My = plate(ratio * b, b, Dx, Dy, H)
    use = max(Mx / sheet.bending[0], My / sheet.bending[1])
    ways = (
        float(span_moment(1.0, ratio * b)) / sheet.bending[0],
        float(span_moment(1.0, b)) / sheet.bending[1],
    )
    assert use <= min(ways)


def patched(a, b, Dx, Dy, H, u, terms=121):
    """Return the greatest moments along and across, 1 N on a square u in the middle: Navier."""
    m, n = np.arange(1, terms, 2)[:, None], np.arange(1, terms, 2)[None]
    over = np.sin(m * np.pi / 2) * np.sin(n * np.pi / 2)
    over = over * np.sin(m * np.pi * u / (2.0 * a)) * np.sin(n * np.pi * u / (2.0 * b))
    w = 16.0 / (np.pi**2 * m * n * u**2) * over / np.pi**4
    w = w / (Dx * m**4 / a**4 + 2.0 * H * (m * n) ** 2 / (a * b) ** 2 + Dy * n**4 / b**4)
    at = np.linspace(0.0, 1.0, 81)[1:-1]
    over_x, over_y = np.sin(np.pi * np.outer(at, m[:, 0])), np.sin(np.pi * np.outer(n[0], at))
    Mx = over_x @ (Dx * (np.pi * m / a) ** 2 * w) @ over_y
    My = over_x @ (Dy * (np.pi * n / b) ** 2 * w) @ over_y
    return np.abs(Mx).max(), np.abs(My).max()


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0, 3.0])
@pytest.mark.parametrize(("material", "inches"), SHEETS[1:])
def test_what_stands_on_a_strip_asks_no_less_than_of_an_orthotropic_plate(material, inches, ratio):
    """A patch of a tenth of the narrower span in the middle, held all round: P s/4 on the strip.

    Without the thinnest sheet, whose values across are printed to one digit.
    """
    sheet = sheets.find_sheet(material, inches * INCH)
    Dx, Dy = sheet.stiffness
    G = (180_000.0 if material == "OSB" else 90_000.0) * PSI
    b, H = 0.6, 2.0 * G * (inches * INCH) ** 3 / 12.0
    a, u = ratio * b, 0.1 * b
    Mx, My = patched(a, b, Dx, Dy, H, u)
    use = max(Mx / sheet.bending[0], My / sheet.bending[1])
    ways = (
        (a - u) / 4.0 / carrying(sheet, u, a, b) / sheet.bending[0],
        (b - u) / 4.0 / carrying(sheet, u, b, a) / sheet.bending[1],
    )
    assert use <= min(ways)


def test_a_metal_or_plastic_plate_too():
    """Of one stiffness, nu 0.3: half of its span; D the same both ways, H = D."""
    for ratio in (1.0, 2.0, 3.0):
        Mx, My = patched(ratio, 1.0, 1.0, 1.0, 1.0, 0.1)
        most = max(Mx + 0.3 * My, My + 0.3 * Mx)
        assert most <= 0.9 / 4.0 / carrying(plastic.find_plastic("acrylic"), 0.1, 1.0, ratio)


@pytest.mark.parametrize(("material", "inches"), SHEETS)
def test_the_free_edge_of_a_sheet_carries_a_line_on_no_less_than_its_strip(material, inches):
    """A half plate with a wave of load along its edge, nu 0: Dx, Dy and H of Huber's equation.

    Its deflection dies away as two exponentials, without moment at the edge and with the load as
    Kirchhoff's shear there; the wave's moment P/a^2 over that at the edge is the strip's width.
    """
    sheet = sheets.find_sheet(material, inches * INCH)
    G = (180_000.0 if material == "OSB" else 90_000.0) * PSI
    H, a = 2.0 * G * (inches * INCH) ** 3 / 12.0, np.pi
    for Dx, Dy in (sheet.stiffness, sheet.stiffness[::-1]):
        root = np.sqrt(complex(H**2 - Dx * Dy))
        r, t = (a * np.sqrt((H + sign * root) / Dy) for sign in (1.0, -1.0))
        A, B = 1.0, -((r / t) ** 2)
        load = abs(Dy * (r**3 * A + t**3 * B) - 2.0 * H * a**2 * (r * A + t * B))
        assert load / a**2 / abs(Dx * a**2 * (A + B)) >= walls.EDGE
