"""Density of wood at a moisture content, against published numbers."""

import numpy as np
import printed
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast import references
from yardfast.materials.moisture import basic_gravity, density_at, gravity_at


def test_white_ash_of_the_wood_handbook() -> None:
    # Wood Handbook FPL-GTR-190 (2010) ch. 4, worked example: G_b 0.55 at 12 % gives G 0.605 and
    # 678 kg/m3. The Handbook reads its chart: 0.6 % is what the closed form leaves.
    assert gravity_at(0.55, 0.12) == pytest.approx(0.605, rel=0.006)
    assert density_at(0.55, 0.12) == pytest.approx(678.0, rel=0.006)


SPECIES = printed.table("species_density_derived").rows


@pytest.mark.parametrize(
    "row", SPECIES, ids=lambda row: f"Wood Handbook relation, {row['species']}"
)
def test_species_densities(row: references.TableRow) -> None:
    moisture = {"rho_8": 0.08, "rho_12": 0.12, "rho_15": 0.15, "rho_19": 0.19, "rho_30_fsp": 0.30}
    for column, x in moisture.items():
        assert density_at(float(row["G_green_basis"]), x) == pytest.approx(
            float(row[column]), abs=0.5 + 1e-9
        )


# the relation itself turns over at a basic gravity of 0.87, beyond every wood of Table 5-3b
gravities = st.floats(0.25, 0.85)
moistures = st.floats(0.0, 0.6)


@given(gravities, moistures, moistures)
def test_wetter_wood_is_never_lighter(gravity: float, one: float, other: float) -> None:
    dry, wet = sorted((one, other))
    assert density_at(gravity, wet) >= density_at(gravity, dry) - 1e-9


@given(gravities, moistures)
def test_gravity_comes_back_from_density(gravity: float, moisture: float) -> None:
    assert basic_gravity(density_at(gravity, moisture), moisture) == pytest.approx(gravity)


def test_green_wood_keeps_its_green_volume() -> None:
    assert gravity_at(0.5, [0.3, 0.6]).tolist() == [0.5, 0.5]


def test_arrays_broadcast() -> None:
    table = density_at(np.array([[0.4], [0.5]]), np.array([0.08, 0.12, 0.19]))
    assert table.shape == (2, 3)
    assert table[1, 2] == pytest.approx(float(density_at(0.5, 0.19)))
