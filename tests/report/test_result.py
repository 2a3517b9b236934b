"""The JSON object: its keys are a contract, its numbers those of the examination."""

import json
import os
import subprocess
import sys
from math import isfinite

import pytest
import verdict_designs

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.data.result import Result
from yardfast.units.frozen import values_by_name

CHECK = {
    "name",
    "demand",
    "capacity",
    "unit",
    "utilization",
    "passes",
    "direction_deg",
    "source",
    "envelope",
    "notes",
}
KEYS = {
    "": {
        "format",
        "name",
        "file",
        "fingerprint",
        "verdict",
        "look_again",
        "joints",
        "geometry",
        "wind",
        "checks",
        "members",
        "seams",
        "free_standing",
        "needs_anchors",
        "limits",
        "equilibrium_error",
        "assumptions",
        "cautions",
        "not_checked",
        "unverified",
    },
    "verdict": {"word", "why", "mend", "unfastened", "not_looked_at"},
    "geometry": {
        "mass_kg",
        "weight_N",
        "mass_light_kg",
        "mass_heavy_kg",
        "center_of_mass_m",
        "height_m",
        "footprint_m",
        "parts",
    },
    "wind": {
        "directions_deg",
        "projected_area_m2",
        "force_N",
        "force_height_m",
        "uplift_N",
        "velocity_pressure_Pa",
        "minimum_governs",
    },
    "limits": {
        "tipping_gust_m_s",
        "sliding_gust_m_s",
        "tipping_gust_low_m_s",
        "tipping_gust_high_m_s",
        "forecast_tipping_gust_m_s",
        "forecast_sliding_gust_m_s",
        "act_forecast_gust_m_s",
        "push_N",
        "push_height_m",
        "return_period_years",
        "return_period_by",
    },
}
ALL = pytest.mark.parametrize("name", verdict_designs.ALL)


def result(name, text=None):
    return Result(examine(read_text(text or verdict_designs.ALL[name], f"{name.lower()}.toml")))


def numbers(value):
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list):
        return [number for item in value for number in numbers(item)]
    return [value] if isinstance(value, float) else []


@ALL
def test_every_fixed_key_is_there_and_every_number_finite(name):
    found = result(name).to_dict()
    for table, keys in KEYS.items():
        assert set(found[table] if table else found) == keys
    for check in [*found["checks"], *found["free_standing"].values()]:
        assert set(check) == CHECK
    assert set(found["free_standing"]) == {"overturning", "sliding"}
    for part in found["geometry"]["parts"]:
        assert set(part) == {"name", "mass_kg", "center_of_mass_m", "volume_m3"}
    assert all(isfinite(number) for number in numbers(found))
    assert json.loads(json.dumps(found, allow_nan=False)) == found


@ALL
def test_checks_come_in_order_and_anchors_are_needed_where_one_of_two_fails(name):
    found = result(name).to_dict()
    assert [check["name"] for check in found["checks"]][:3] == ["overturning", "sliding", "bearing"]
    alone = found["free_standing"].values()
    assert found["needs_anchors"] == (not all(check["passes"] for check in alone))


@ALL
def test_directions_ascend_and_every_list_is_as_long(name):
    wind = result(name).to_dict()["wind"]
    directions = wind["directions_deg"]
    assert directions == sorted(set(directions))
    assert directions[0] >= 0.0
    assert directions[-1] < 360.0
    for key in ("projected_area_m2", "force_N", "force_height_m", "uplift_N"):
        assert len(wind[key]) == len(directions)


@ALL
def test_parts_add_up_to_the_whole(name):
    geometry = result(name).to_dict()["geometry"]
    assert sum(part["mass_kg"] for part in geometry["parts"]) == pytest.approx(geometry["mass_kg"])
    corners = geometry["footprint_m"]
    shifted = [*corners[1:], corners[0]]
    area = sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(corners, shifted, strict=True)) / 2.0
    assert area > 0.0


def test_quantities_convert():
    found = result("HEXAGON")
    # a hexagonal post, 12 in over flats, 48 in high: 2 sqrt(3) (6 in)2 48 in = 0.09809 m3
    assert found.mass.to("kg").magnitude == pytest.approx(58.86, abs=0.005)
    assert found.height.to("inch").magnitude == pytest.approx(48.0)
    assert found.limits.push.to("N").magnitude == found.to_dict()["limits"]["push_N"]
    assert (
        found.limits.tipping_gust.to("m/s").magnitude
        == found.to_dict()["limits"]["tipping_gust_m_s"]
    )
    assert found.checks[0].name == "overturning"
    assert found.checks[0].demand.to("N*m").magnitude > 0.0


def test_a_limit_beyond_150_m_s_is_null():
    limits = result("SOLID_AS_ROCK").to_dict()["limits"]
    assert limits["tipping_gust_m_s"] is None


def test_fingerprint_changes_with_the_design_only_by_its_text():
    one = result("HARBOUR").fingerprint
    assert len(one) == 12
    assert one == result("HARBOUR").fingerprint
    other = verdict_designs.HARBOUR.replace("'58 mph'", "'59 mph'")
    assert result("HARBOUR", other).fingerprint != one
    carried = verdict_designs.HARBOUR.replace("\n", "\r\n")
    assert result("HARBOUR", carried).fingerprint == one


@pytest.mark.slow
@pytest.mark.parametrize("lines", ["mirror = ['x', 'y']", "open = ['top', 'front', 'left']"])
def test_fingerprint_is_the_same_in_every_run(tmp_path, lines):
    # Sets of words come in another order in each run, unless PYTHONHASHSEED says which.
    part = "[[part]]\nname = 'b'\nshape = 'box'\nmaterial = 'OSB'\nwall = '1 in'\n"
    sizes = "length = '9 in'\nwidth = '9 in'\nheight = '9 in'\non = 'gallery'\n"
    lines = f"at = ['3 in', '3 in', '0 in']\n{lines}"
    file = tmp_path / "piece.toml"
    file.write_text(f"{verdict_designs.HARBOUR}\n{part}{sizes}{lines}\n", encoding="utf-8")
    code = "import sys, yardfast as yf; print(yf.check(sys.argv[1]).fingerprint)"
    found = {
        subprocess.run(
            [sys.executable, "-c", code, str(file)],
            env={**os.environ, "PYTHONHASHSEED": str(seed)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in range(4)
    }
    assert len(found) == 1


def test_results_are_compared_without_an_error():
    one, other = result("HARBOUR"), result("HARBOUR")
    for a, b in zip(_all_within(one), _all_within(other), strict=True):
        assert isinstance(a == b, bool)
    assert one != other
    assert len({one, other}) == 2


def _all_within(value):
    """Return a dataclass and every one that it holds."""
    inside = values_by_name(value)
    if not inside:
        return []
    held = [*inside.values()]
    several = [each for one in held for each in (one if isinstance(one, tuple) else (one,))]
    return [value, *(each for one in several for each in _all_within(one))]


def test_notes_tell_factors_and_what_a_pass_means():
    notes = result("CODE").to_dict()["checks"][0]["notes"]
    assert "0.6 times the light weight and 0.6 times the wind." in notes
    assert any(note.startswith("Bare factor of safety") for note in notes)
    assert "A pass means that the map wind just does not tip it." in notes


def test_the_least_wind_governs_where_it_does():
    assert result("LEAST_WIND").to_dict()["wind"]["minimum_governs"] is True
    assert result("HARBOUR").to_dict()["wind"]["minimum_governs"] is False
