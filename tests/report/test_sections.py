"""What stands behind the first screen: width, words, figures against those of the examination."""

import re

import pytest
import verdict_designs

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.design.model import Part
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.report.data.result import Result
from yardfast.report.screens.folder import folder, folder_row
from yardfast.report.screens.listings import ground_lines, material_lines
from yardfast.report.screens.sections import Shown, shown_of
from yardfast.report.wording.amounts import MPH, Amounts
from yardfast.report.wording.as_read import as_read
from yardfast.units.frozen import replace

BANNED = re.compile(
    r"\b(?:safe|storm-proof|wind-rated|certified|engineered|approved|meets code|guaranteed|tested"
    r"|maintenance-free|apothem|azimuth|OK|passes)\b"
)
EVERYTHING = Shown(everything=True, engineer=True)
ALL = pytest.mark.parametrize("name", verdict_designs.ALL)


def examined(name):
    return examine(read_text(verdict_designs.ALL[name], f"{name.lower()}.toml"))


def text_of(name, shown=None):
    return "\n".join(line.text for line in shown_of(examined(name), shown or Shown()))


def flat(text):
    return " ".join(text.split())


@ALL
@pytest.mark.parametrize("shown", [None, EVERYTHING], ids=["short", "in full"])
def test_no_line_is_wider_than_80_columns(name, shown):
    assert max(len(line.text) for line in shown_of(examined(name), shown or Shown())) <= 80


@ALL
@pytest.mark.parametrize("shown", [None, EVERYTHING], ids=["short", "in full"])
def test_words_that_promise_too_much_never_appear(name, shown):
    text = flat(text_of(name, shown))
    # what passes a check of a code is always followed by what that means
    text = text.replace("the map wind just does not tip what passes", "")
    assert not BANNED.search(text), text


def test_neither_folder_nor_listings_nor_json_promise_too_much():
    found = [examined(name) for name in verdict_designs.ALL]
    lines = [*folder(map(folder_row, found)), *material_lines(), *ground_lines()]
    texts = ["\n".join(line.text for line in lines)]
    texts += [sentence for each in found for sentence in sentences(Result(each).to_dict())]
    for text in texts:
        said = flat(text).replace("the map wind just does not tip what passes", "")
        assert not BANNED.search(said), said


def sentences(value):
    if isinstance(value, str):
        return [value]
    items = value.values() if isinstance(value, dict) else value if isinstance(value, list) else []
    return [sentence for item in items for sentence in sentences(item)]


@ALL
def test_exposure_letters_come_with_their_meaning(name):
    for letter in re.finditer(r"exposure [BCD]\b", flat(text_of(name, EVERYTHING))):
        after = flat(text_of(name, EVERYTHING))[letter.end() :]
        before = flat(text_of(name, EVERYTHING))[: letter.start()]
        assert after.startswith(" (") or before.endswith("'Houses and trees' (")


def test_gusts_are_rounded_down_and_act_at_to_five():
    found, text = examined("HARBOUR"), flat(text_of("HARBOUR"))
    tips = found.limits.forecast_tipping / MPH
    act = found.limits.act / MPH
    assert f"at {int(tips)} it tips" in text
    assert f"when gusts over {5 * int(act / 5 + 1e-9)} mph are forecast" in text
    assert not re.search(r"\d\.\d+ mph", text)


def test_polygons_are_read_back_with_all_three_widths():
    # a hexagon's points are 2/sqrt(3) = 1.1547 of its flats, its side half of its points
    found = examined("HEXAGON")
    text = flat(" ".join(line.text for line in as_read(found.structure, Amounts(False))))
    assert "12 in flat to flat (13 7/8 in over points, side 6 7/8 in)" in text
    # an octagon of 20 in: 20/cos(22.5 deg) = 21.65, 20 tan(22.5 deg) = 8.28 in
    assert "21 5/8" in flat(text_of("HARBOUR", Shown(as_read=True)))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("SOLID_AS_ROCK", "starts to tip in no gust below 335 mph"),
        ("LATTICE", "Vines make a lattice nearly solid"),
        ("WHEEL", "A spinning wheel can hurt"),
        ("WEIGHED", "Weight 44 lb, as weighed."),
        ("ROUND", "Weight 104 kg, as given."),
        ("HARBOUR", "if a scale says other, add weighed = '.. lb'."),
        ("HEXAGON", "over any side"),
    ],
)
def test_each_turn_of_things_has_its_words(name, said):
    assert said in flat(text_of(name, EVERYTHING))


@ALL
def test_every_caution_and_all_that_was_not_looked_at_stand_in_full(name):
    found, text = examined(name), flat(text_of(name, Shown(cautions=True)))
    for remark in (*Result(found).cautions, *Result(found).not_checked):
        assert flat(remark) in text


@ALL
def test_one_section_comes_with_the_word_and_no_other(name):
    found = examined(name)
    for one in ("numbers", "as_read", "assumed", "cautions"):
        lines = [line.text for line in shown_of(found, Shown(**{one: True}))]
        assert any(found.verdict.word.upper() in line for line in lines[:5])
        heads = ("Checks ", "As read", "Assumed", "Take care")
        assert sum(line.startswith(heads) for line in lines) == 1


def test_code_wind_is_named_with_source_and_period_or_their_lack():
    text = flat(text_of("CODE", Shown(numbers=True)))
    assert "Code wind: ASCE 7-22, 105 mph ultimate 3-second gust; no source" in text
    assert "no return period given" in text
    named = flat(text_of("CODE_NAMED", Shown(numbers=True)))
    assert "ASCE 7-16, 115 mph ultimate" in named
    assert "source: Harbour County, ordinance 12; return period 700 years" in named


def test_a_design_in_metric_is_shown_in_metric():
    text = text_of("METRIC", EVERYTHING)
    assert re.search(r"\d km/h", text)
    assert not re.search(r"\d (?:mph|lb-ft)\b", text.split("Assumed")[0])


def test_engineers_are_told_factors_clause_and_direction():
    text = flat(text_of("CODE", EVERYTHING))
    for said in (
        "utilization",
        "wind from",
        " deg",
        "0.6 D",
        "0.6 W",
        "G 0.",
        "Kd 0.90 square",
        "q ",
    ):
        assert said in text
    assert "For engineers" not in text_of("CODE", Shown(numbers=True))


def test_has_and_needs_agree_with_yes_and_no():
    row = re.compile(
        r"^  \w+ .*? ([\d,.]+) [\w-]+(?: m)? +([\d,.]+) [\w-]+(?: m)?   (yes|no)$", re.M
    )
    rows = {name: row.findall(text_of(name, Shown(numbers=True))) for name in verdict_designs.ALL}
    assert sum(map(len, rows.values())) > 2 * len(rows)
    for name, found in rows.items():
        for has, needs, answer in found:
            enough = float(has.replace(",", "")) >= float(needs.replace(",", ""))
            assert enough == (answer == "yes"), name


def test_every_shape_is_read_back_in_words():
    shapes = {
        "rafter": Member((0.0, 0.0, 0.3), (0.6, 0.0, 0.9), 0.0381, 0.0889),
        "pipe": Member((0.0, 0.0, 0.3), (0.0, 0.0, 0.9), across=0.0508),
        "heron": Cutout(((-0.2, 0.0), (0.2, 0.0), (0.0, 0.7)), 0.019),
        "dome": Dome(0.6, 0.2),
        "vault": Vault(0.8, 0.5, 0.4),
    }
    found = examined("STANDS")
    parts = [Part(name, shape, density=500.0) for name, shape in shapes.items()]
    design = replace(found.design, parts=(found.design.parts[0], *parts))
    at = replace(found.at, design=design, structure=replace(found.structure, design=design))
    whole = replace(found, design=design, at=at)
    text = flat(" ".join(line.text for line in as_read(whole.structure, Amounts(True))))
    for said in (
        "rafter 38 mm by 89 mm, 849 mm long",
        "pipe 51 mm across, 600 mm long",
        "heron 400 mm by 700 mm high, 19 mm thick",
        "dome 600 mm across, 200 mm high",
        "vault 800 mm along the ridge, 500 mm wide, 400 mm high",
    ):
        assert said in text
