"""Wind on parts by themselves: pressure times what blows on them, beside the wind on the whole."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.acting.local_wind import local_wind
from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box


@pytest.mark.parametrize("method", ["gust", "forecast", "ASCE 7-22"])
def test_a_part_alone_takes_the_force_of_the_whole(method):
    """Of a box that is all there is: the greatest force of any direction, by the sum of all."""
    site = {"exposure": "C", "wind_kind": "ultimate"} if method.startswith("ASCE") else {}
    site |= {"exposure": "C"} if method == "forecast" else {}
    box = Part("box", Box(1.0, 0.6, 1.2), density=300.0)
    found = examine(design(box, method=method, **site))
    each = local_wind(found.structure, found.exposed, found.at.method)
    whole = np.hypot(*np.moveaxis(found.actions.force, -1, 0)).max()
    assert each.force[0] == pytest.approx(whole, rel=1e-9)


def test_pressure_times_what_blows_by_hand():
    """A post 0.1 m square and 1 m high in a gust of 20 m/s at it: 0.613 x 400 = 245.2 Pa on 0.1 m2
    face on, by a coefficient of its own; what stands on a diagonal shows 1.41 times as much."""
    foot = Part("foot", Box(1.0, 1.0, 0.04), density=550.0)
    post = Part("post", Solid(4, 0.1, 0.1, 1.0), Place(on="foot"), density=550.0)
    found = examine(design(foot, post, wind=20.0))
    each = local_wind(found.structure, found.exposed, found.at.method)
    coefficient = found.exposed.coefficient[1]
    shown = found.exposed.area[1]
    q = float(found.at.method.pressure(found.exposed.pressure_height)[1])
    assert q == pytest.approx(0.613 * 20.0**2, rel=1e-3)
    assert each.standing[1] == pytest.approx(q * coefficient.max(), rel=1e-9)
    assert each.force[1] == pytest.approx((q * coefficient * shown).max(), rel=1e-9)


@pytest.mark.parametrize(("wind", "least"), [(38.0, 16.0), (60.0, 16.0)])
def test_no_part_takes_less_than_the_least_wind_of_the_standard(wind, least):
    """ASCE/SEI 7-22 29.7: 16 psf (0.77 kN/m2) times the area, where wind itself asks less."""
    psf = 47.88026
    site = {"exposure": "B", "wind_kind": "ultimate", "method": "ASCE 7-22", "wind": wind}
    found = examine(design(Part("box", Box(1.0, 0.6, 1.2), density=300.0), **site))
    each = local_wind(found.structure, found.exposed, found.at.method)
    assert each.least == pytest.approx(least * psf, rel=1e-5)
    assert each.standing[0] >= each.least
    assert each.force[0] >= each.least * 1.0 * 1.2 * (1.0 - 1e-9)
    if wind < 40.0:
        assert each.standing[0] == pytest.approx(16.0 * psf, rel=1e-5)


@pytest.mark.parametrize("method", ["gust", "forecast"])
def test_a_gust_has_no_least_wind(method):
    site = {"exposure": "C"} if method == "forecast" else {}
    box = Part("box", Box(1.0, 0.6, 1.2), density=300.0)
    found = examine(design(box, method=method, wind=5.0, **site))
    assert local_wind(found.structure, found.exposed, found.at.method).least == 0.0


def test_a_part_takes_the_gust_effect_of_the_standard_once_by_hand():
    """ASCE/SEI 7-22 29.3-1: p = q_z K_d G C_f, 60 m/s, exposure B, a box 1.0 x 0.6 x 1.2 m: q_z by
    26.10-1 at K_z 0.57 up to 15 ft, K_d and G by their own relations, which tables hold."""
    site = {"exposure": "B", "wind_kind": "ultimate", "method": "ASCE 7-22", "wind": 60.0}
    found = examine(design(Part("box", Box(1.0, 0.6, 1.2), density=300.0), **site))
    each = local_wind(found.structure, found.exposed, found.at.method)
    K_d = found.at.method.directionality(found.exposed.kinds)[0]
    G = 0.925 * (1 + 1.7 * 3.4 * I_Z * Q_B) / (1 + 1.7 * 3.4 * I_Z)
    q = 0.613 * 0.57 * 60.0**2 * K_d
    C = found.exposed.coefficient[0].max() * found.exposed.case[0].max()
    assert each.standing[0] == pytest.approx(q * G * C, rel=1e-3)
    assert each.pressure[0] == pytest.approx(q * G, rel=1e-3)


I_Z = 0.30 * (33.0 / 30.0) ** (1.0 / 6.0)
"""Exposure B: c 0.30, z_min 30 ft (ASCE/SEI 7-22 Table 26.11-1, memory)."""

Q_B = (1.0 / (1.0 + 0.63 * ((0.6 + 1.2) / (97.54 * (30.0 / 33.0) ** (1.0 / 3.0))) ** 0.63)) ** 0.5
"""The least breadth has the greatest G; l 320 ft = 97.54 m, epsilon 1/3."""
