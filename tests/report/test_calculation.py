"""The calculation on paper: its numbers are the result's, its arithmetic holds, nothing is lost."""

import math
import re
from pathlib import Path

import pytest
from garden import EXAMPLES, each_example
from pages import pages, words
from verdict_designs import block, design_text

import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.stated.worked import gripping, part_winds, tipping_at, turning
from yardfast.report.calculation.calculation import calculation, sections
from yardfast.report.calculation.calculation_text import four_figures

ROOT = Path(__file__).resolve().parents[2]
HELD = (
    design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph")
    + """
[[anchor]]
name = 'stakes'
kind = 'steel stake 1 in x 36 in'
where = 'corners'
"""
)
GUYED = (
    design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph", units="metric")
    + """
[[guy]]
name = 'ropes'
line = 'polyester rope 1/4 in'
anchor = 'screw anchor 30 in'
height = '3 ft'
radius = '3 ft'
count = 4
"""
)


STANDING = [file for file in EXAMPLES if "\nembed" not in file.read_text(encoding="utf-8")]


def number(text):
    return float(text.replace(",", ""))


def steps(found):
    return [item for part in sections(found) for item in part["items"] if item["kind"] == "step"]


# what each formula of the template says, written once more by hand
ARITHMETIC = {
    "weight": lambda v: (v["g"] * v["m"], v["W"]),
    "centre": lambda v: (v["mz"] / v["m"], v["z"]),
    "gust at the piece": lambda v: (v["Vf"] * math.sqrt(v["K"]), v["V"]),
    "gust pressure": lambda v: (0.5 * v["rho"] * v["V"] ** 2, v["q"]),
    "code pressure": lambda v: (0.613 * v["Kz"] * v["Kzt"] * v["Ke"] * v["V"] ** 2, v["q"]),
    "overturning": lambda v: (v["w"] * (v["Mw"] + v["U"] * v["a"]), v["M"]),
    "holding": lambda v: (v["D"] * v["W"] * (v["d"] * v["cos"] - v["z"] * v["sin"]), v["M"]),
    "pushing": lambda v: (v["w"] * v["H"] + v["D"] * v["W"] * v["sin"], v["S"]),
    "friction": lambda v: (
        max(v["mu"] * (v["D"] * v["W"] * v["cos"] - v["w"] * v["U"]), 0.0),
        v["R"],
    ),
    "ratio": lambda v: (v["demand"] / v["capacity"], v["ratio"]),
    "tipping gust": lambda v: (math.sqrt(2.0 * v["hold"] / v["one"] / v["rho"]), v["V"]),
    "forecast gust": lambda v: (v["V"] / math.sqrt(v["K"]), v["Vf"]),
    "act at": lambda v: (
        min(v["Vtl"], v["Vsl"], v["Vt"] / math.sqrt(v["r"]), v["Vs"] / math.sqrt(v["r"]))
        / math.sqrt(v["K"]),
        v["V"],
    ),
}


@each_example
def test_the_printed_arithmetic_holds_in_every_example(file):
    found = yf.check(yf.read(file)).examination
    seen = set()
    for step in steps(found):
        if step["formula"] not in ARITHMETIC:
            continue
        values = {k: number(v) for k, v in step["values"].items() if k != "met"}
        made, printed = ARITHMETIC[step["formula"]](values)
        assert made == pytest.approx(printed, rel=4e-3, abs=2e-2), step
        seen.add(step["formula"])
    wanted = {"weight", "overturning", "holding", "pushing", "friction"}
    assert (wanted if found.posts is None else {"weight", "ratio"}) <= seen


@pytest.mark.parametrize("file", STANDING, ids=lambda file: file.stem)
def test_steps_end_at_the_checks_own_numbers(file):
    found = yf.check(yf.read(file)).examination
    turned, gripped, wind = turning(found), gripping(found), found.factors.wind
    tips = found.overturning
    assert wind * turned.over == pytest.approx(tips.demand)
    assert tips.dead * turned.hold == pytest.approx(tips.capacity)
    slides = found.sliding
    slope = math.sin(found.standing.slope)
    assert wind * gripped.force + slides.dead * gripped.weight * slope == pytest.approx(
        slides.demand
    )
    parts = part_winds(found)
    assert sum(one.force for one in parts) == pytest.approx(turned.force, rel=0.05)
    limit = tipping_at(found)
    if found.limits.loose_tips is None and limit is not None:
        hold, one, pressure = limit
        assert hold / one == pytest.approx(pressure)
        assert math.sqrt(2.0 * pressure / 1.226) == pytest.approx(found.limits.tipping, rel=1e-6)


def test_the_light_tower_s_numbers_are_those_of_the_result():
    result = yf.check(yf.read(ROOT / "examples" / "light-tower.toml"))
    given, page = result.to_dict(), calculation(result.examination, "letter")
    said = words(page)
    for check in given["checks"]:
        for key in ("demand", "capacity"):
            if check[key] is not None:
                assert four_figures(check[key]) in said
        if check["utilization"] is not None:
            assert f"{check['utilization']:.3f}" in said
        assert " ".join(check["notes"]) in said
    for sentence in (*given["assumptions"], *given["cautions"], *given["not_checked"]):
        plain = " ".join(sentence.replace("-", "").split())
        assert plain in said.replace("- ", "").replace("-", "")
    for part in given["geometry"]["parts"]:
        assert part["name"] in said
        assert four_figures(part["mass_kg"]) in said
    assert four_figures(given["limits"]["tipping_gust_m_s"]) in said
    count = len(pages(page))
    for i, one in enumerate(pages(page), start=1):
        text = " ".join(one.extract_text().split())
        assert f"page {i} of {count}" in text
        assert f"fingerprint {given['fingerprint']}" in text
    assert page == calculation(result.examination, "letter")


@pytest.mark.slow
@pytest.mark.parametrize(
    ("text", "said"),
    [
        (HELD, ["Anchors", "4 of steel stake 1 in x 36 in", "anchor head: stakes"]),
        (GUYED, ["Guys", "ropes: 4 guys", "guy: ropes"]),
        (
            design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph"),
            ["With the suggested anchors", "Calculated"],
        ),
        (
            design_text(
                block("24 in", "24 in", "12 in", "150 lb/ft^3"), wind="35 mph", ground="paving"
            ),
            ["Bearing on paving", "What was not checked"],
        ),
        (
            design_text(
                block("12 in", "12 in", "48 in", "35 lb/ft^3"),
                method="ASCE 7-16",
                wind="115 mph",
                ground="paving",
            ),
            ["ASCE/SEI 7-16 Eq. 26.10-1", "0.613", "Gust effect factor"],
        ),
        (
            design_text(
                block("40 in", "40 in", "3 in", "10 lb/ft^3"), method="gust", exposure=None
            ),
            ["Bernoulli"],
        ),
    ],
    ids=["anchors", "guys", "suggested", "stands", "code", "gust"],
)
def test_each_turn_of_things_has_its_pages(text, said):
    found = words(calculation(examine(read_text(text)), "a4"))
    for each in said:
        assert each in found
    assert not re.findall(r"\b(safe|certified|guaranteed|passes)\b", found, re.IGNORECASE)


def test_names_full_of_markup_print_literally():
    markup = r"*b* _c_ #strong[x] $y$ @z <w> \ `q` // /* #panic(sys)"
    text = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), name=markup)
    text = text.replace("name = 'block'", f"name = '{markup} 2'")
    found = words(calculation(examine(read_text(text)), "a4"))
    assert markup in found
    assert f"{markup} 2" in found


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (12345.6, "12,346"),
        (123.45, "123.5"),
        (12.345, "12.35"),
        (1.2345, "1.234"),
        (0.012345, "0.01235"),
        (0.0, "0"),
    ],
)
def test_numbers_have_four_figures(value, text):
    assert four_figures(value) == text
