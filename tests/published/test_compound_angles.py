"""Bevels and mitres of leaning panels against a published chart of saw settings.

"Compound-angle settings for popular structures", chart in an operator's manual of a mitre saw,
read at manualsdump.com/en/manuals/craftsman-315.21212/276873/24: for a pitch of the sides (from
level) and a number of sides, the bevel B and the mitre M, "each given to the closest 0.005 deg".
With the panel lying flat, B is the blade's tilt from square and M the angle between the side edge
and a line square to the bottom edge.
"""

import numpy as np
import pytest

from yardfast.design.cutting.panels import compound_bevel
from yardfast.design.cutting.sawn import sawn_from
from yardfast.design.shapes.bodies import Shell

CHART = {
    5: {4: (44.89, 3.53), 5: (35.90, 2.94), 6: (29.91, 2.50), 7: (25.63, 2.17), 8: (22.42, 1.91),
        9: (19.93, 1.71), 10: (17.94, 1.54)},
    10: {4: (44.56, 7.05), 5: (35.58, 5.86), 6: (29.62, 4.98), 7: (25.37, 4.32), 8: (22.19, 3.81),
         9: (19.72, 3.40), 10: (17.74, 3.08)},
    15: {4: (44.01, 10.55), 5: (35.06, 8.75), 6: (29.15, 7.44), 7: (24.95, 6.45),
         8: (21.81, 5.68), 9: (19.37, 5.08), 10: (17.42, 4.59)},
    30: {4: (40.89, 20.70), 5: (32.18, 17.09), 6: (26.57, 14.48), 7: (22.64, 12.53),
         8: (19.73, 11.03), 9: (17.50, 9.85), 10: (15.72, 8.89)},
    40: {4: (37.45, 27.03), 5: (29.10, 22.20), 6: (23.86, 18.75), 7: (20.25, 16.19),
         8: (17.60, 14.24), 9: (15.58, 12.70), 10: (13.98, 11.46)},
    45: {4: (35.26, 30.00), 5: (27.19, 24.56), 6: (22.21, 20.70), 7: (18.80, 17.87),
         8: (16.32, 15.70), 9: (14.43, 14.00), 10: (12.94, 12.62)},
    60: {4: (26.57, 37.76)},
    70: {4: (18.88, 41.64)},
    75: {4: (14.51, 43.08)},
}  # fmt: skip
ROWS = [(p, n, m, b) for p, row in CHART.items() for n, (m, b) in row.items()]
HALF_A_DIGIT = 0.005 + 1.0e-9


@pytest.mark.parametrize(("pitch", "sides", "mitre", "bevel"), ROWS)
def test_bevel_and_mitre_as_printed(pitch, sides, mitre, bevel):
    lean = np.radians(90.0 - pitch)
    assert np.degrees(compound_bevel(sides, lean)) == pytest.approx(bevel, abs=HALF_A_DIGIT)
    height = 0.3
    top = 0.2
    bottom = top + 2.0 * height * np.tan(lean)
    (panel,) = sawn_from(Shell(sides, bottom, top, height, 0.005)).panels
    assert np.degrees(panel.bevel) == pytest.approx(bevel, abs=HALF_A_DIGIT)
    assert np.degrees(panel.slant) == pytest.approx(mitre, abs=HALF_A_DIGIT)


def test_the_bevels_by_hand_of_an_octagonal_tower():
    # 18 in over flats below, 10 in above, 48 in high: the panels lean atan(4/48) = 4.7636 deg;
    # sin(bevel) = cos(4.7636) sin(22.5) = 0.996546 x 0.382683 = 0.381361, bevel 22.418 deg
    # (Snyder and Gottesman, Compound-Angle Joinery, 2015: mitre joint, A = 180/n)
    (panel,) = sawn_from(Shell(8, 18 * 0.0254, 10 * 0.0254, 48 * 0.0254, 0.019)).panels
    assert np.degrees(panel.lean) == pytest.approx(4.7636, abs=0.00005)
    assert np.degrees(panel.bevel) == pytest.approx(22.418, abs=0.0005)
    # widths: 18 tan(22.5) = 7.4558 in, 10 tan(22.5) = 4.1421 in; length sqrt(48^2 + 4^2) = 48.1664
    assert panel.bottom / 0.0254 == pytest.approx(7.4558, abs=0.00005)
    assert panel.top / 0.0254 == pytest.approx(4.1421, abs=0.00005)
    assert panel.length / 0.0254 == pytest.approx(48.1664, abs=0.00005)
