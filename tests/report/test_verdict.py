"""What a person reads: order, width, words; figures against those of the examination."""

import re
from dataclasses import replace

import pytest
import verdict_designs

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judging import Kind
from yardfast.design.model import Part
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.report.amounts import MPH, POUND_FORCE, Amounts
from yardfast.report.as_read import as_read
from yardfast.report.cautions import cautions
from yardfast.report.listings import ground_lines, material_lines
from yardfast.report.not_checked import not_checked
from yardfast.report.result import Result
from yardfast.report.summary import summary
from yardfast.report.verdict import MOST_LINES, Shown, verdict

BANNED = re.compile(
    r"\b(?:safe|storm-proof|wind-rated|certified|engineered|approved|meets code|guaranteed|tested"
    r"|maintenance-free|apothem|azimuth|OK|passes)\b"
)
EVERYTHING = Shown(engineer=True, assumptions=True, cautions=True)
ALL = pytest.mark.parametrize("name", verdict_designs.ALL)


def examined(name):
    return examine(read_text(verdict_designs.ALL[name], f"{name.lower()}.toml"))


def text_of(name, shown=None):
    return "\n".join(line.text for line in verdict(examined(name), shown))


def flat(text):
    return " ".join(text.split())


@ALL
@pytest.mark.parametrize("shown", [None, EVERYTHING], ids=["short", "in full"])
def test_no_line_is_wider_than_80_columns(name, shown):
    assert max(len(line.text) for line in verdict(examined(name), shown)) <= 80


@ALL
@pytest.mark.parametrize("shown", [None, EVERYTHING], ids=["short", "in full"])
def test_words_that_promise_too_much_never_appear(name, shown):
    text = flat(text_of(name, shown))
    # what passes a check of a code is always followed by what that means
    text = text.replace("the map wind just does not tip what passes", "")
    assert not BANNED.search(text), text


def test_neither_summary_nor_listings_nor_json_promise_too_much():
    found = [examined(name) for name in verdict_designs.ALL]
    lines = [*summary(found), *material_lines(), *ground_lines()]
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


@ALL
def test_blocks_come_in_the_order_that_matters(name):
    text = text_of(name)
    heads = ["Untied ", "Pushed ", "Slides ", "Checks ", "Not checked: ", "As read", "Assumed: "]
    places = [text.index(head) for head in [*heads, "Take care: ", "Next: "]]
    assert places == sorted(places)
    first = re.search(r"[A-Z]{2,} [A-Z]{2,}", text)
    assert first
    assert first.start() < places[0]
    if "Hold it one of these ways" in text:
        assert text.index("Slides ") < text.index("Hold it one") < text.index("Checks ")


@ALL
def test_push_slide_and_what_was_not_checked_always_stand_there(name):
    found, text = examined(name), flat(text_of(name))
    assert "No promise for the whole piece." in text
    for remark in not_checked(found):
        assert flat(remark.short) in text


@ALL
def test_folding_drops_no_caution(name):
    found, text = examined(name), flat(text_of(name))
    for remark in cautions(found):
        assert flat(remark.short) in text
    in_full = flat(text_of(name, EVERYTHING))
    for remark in cautions(found):
        assert flat(remark.full) in in_full


def test_the_harbour_light_fits_38_lines():
    assert len(verdict(examined("HARBOUR"))) <= MOST_LINES


def test_gusts_are_rounded_down_and_act_at_to_five():
    found, text = examined("HARBOUR"), flat(text_of("HARBOUR"))
    tips = found.limits.forecast_tipping / MPH
    act = found.limits.act / MPH
    assert f"starts to tip in a forecast gust of about {int(tips)} mph" in text
    assert f"when gusts over {5 * int(act / 5 + 1e-9)} mph are forecast" in text
    assert not re.search(r"\d\.\d+ mph", text)


def test_stakes_are_told_first_with_pulls_up_to_five_pounds():
    found, text = examined("HARBOUR"), flat(text_of("HARBOUR"))
    pull = int(re.search(r"ANCHOR IT\. Four stakes that each hold (\d+) lb straight up", text)[1])
    asked = found.remedies.stakes.pull / POUND_FORCE
    assert pull % 5 == 0
    assert asked <= pull < asked + 5.0


def test_polygons_are_read_back_with_all_three_widths():
    # a hexagon's points are 2/sqrt(3) = 1.1547 of its flats, its side half of its points
    found = examined("HEXAGON")
    text = flat(" ".join(line.text for line in as_read(found, Amounts(False))))
    assert "12 in flat to flat (13 7/8 in over points, side 6 7/8 in)" in text
    # an octagon of 20 in: 20/cos(22.5 deg) = 21.65, 20 tan(22.5 deg) = 8.28 in
    assert "foot 20 / 21 5/8 / 8 1/4" in flat(text_of("HARBOUR"))


def test_what_stands_says_so_with_what_was_not_checked():
    text = flat(text_of("STANDS"))
    assert (
        "STANDS UNTIED in the 35 mph forecast gust you asked, half again to spare; not checked: "
        "strength of what it is made of. Untied it " in text
    )
    # at which gust to stake it stands once, on the line for that
    assert text.count("stake it") == 1
    assert re.search(r"Untied stake it when gusts over \d+ mph are forecast", text)
    assert "Hold it one of these ways" not in text


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("FALLS", "IT FALLS OVER with no wind"),
        ("SLIDES_DOWN", "IT SLIDES DOWNHILL with no wind"),
        ("PUSHED", "FASTEN IT AGAINST PEOPLE"),
        ("SINKS", "IT FALLS OVER with no wind at all: soft clay gives way beneath its foot"),
        ("FALLS", "its balance point lies beyond its foot"),
        ("HOPELESS", "NOTHING IN THIS LIST HOLDS IT. Make it lower or smaller, or set its posts"),
        ("AT_PIECE", "SPREAD ITS FOOT"),
        ("SANDY", "anchors no: 100 lb up each is more than anchors this near each other hold"),
        ("SOLID_AS_ROCK", "starts to tip in no gust below 335 mph"),
        ("AT_PIECE", "40 mph gust at the piece"),
        ("LATTICE", "vines triple a lattice's wind"),
        ("WHEEL", "a spinning wheel can hurt"),
        ("WEIGHED", "Weight 44 lb, as weighed."),
        ("ROUND", "Weight 104 kg, as given."),
        ("HARBOUR", "if a scale says other, add weighed = '.. lb'."),
        ("HEXAGON", "over any side"),
    ],
)
def test_each_turn_of_things_has_its_words(name, said):
    assert said in flat(text_of(name))


def test_paving_is_offered_no_stakes():
    text = text_of("PAVED")
    assert not re.search(r"\bstakes? +\d", text)
    assert "bolts" in text


def test_code_wind_is_named_with_source_and_period_or_their_lack():
    lines = text_of("CODE").splitlines()
    assert lines[1].startswith("Code wind: ASCE 7-22, 105 mph ultimate 3-second gust; no source")
    assert "no return period given" in flat(text_of("CODE"))
    named = flat(text_of("CODE_NAMED"))
    assert "ASCE 7-16, 115 mph ultimate" in named
    assert "source: Harbour County, ordinance 12; return period 700 years" in named


def test_a_pass_under_a_code_is_said_to_be_just():
    text = flat(text_of("CODE_STANDS"))
    assert "STANDS UNTIED in the 105 mph map wind (ASCE 7-22), which just does not tip it" in text


def test_the_least_wind_is_named_when_it_decides():
    found, text = examined("LEAST_WIND"), flat(text_of("LEAST_WIND"))
    assert found.minimum_governs
    assert "16 psf" in text.split("Untied ")[0]


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
    assert "For engineers" not in text_of("CODE")


def test_has_and_needs_agree_with_yes_and_no():
    row = re.compile(
        r"^  \w+ .*? ([\d,.]+) [\w-]+(?: m)? +([\d,.]+) [\w-]+(?: m)?   (yes|no)$", re.M
    )
    rows = {name: row.findall(text_of(name)) for name in verdict_designs.ALL}
    assert sum(map(len, rows.values())) > 2 * len(rows)
    for name, found in rows.items():
        for has, needs, answer in found:
            enough = float(has.replace(",", "")) >= float(needs.replace(",", ""))
            assert enough == (answer == "yes"), name


def test_many_designs_come_lowest_act_at_first():
    found = [examined(name) for name in ("STANDS", "HARBOUR", "SOLID_AS_ROCK")]
    lines = [line.text for line in summary(found)]
    assert max(map(len, lines)) <= 80
    names = [line[:7].strip() for line in lines[2:5]]
    assert names == ["Harbour", "Piece", "Piece"]
    assert "Not checked:" in "\n".join(lines)
    limits = [e.limits.act for e in found]
    assert limits[1] < limits[0]


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
    whole = replace(found, design=design, structure=replace(found.structure, design=design))
    text = flat(" ".join(line.text for line in as_read(whole, Amounts(True))))
    for said in (
        "rafter 38 mm by 89 mm, 849 mm long",
        "pipe 51 mm across, 600 mm long",
        "heron 400 mm by 700 mm high, 19 mm thick",
        "dome 600 mm across, 200 mm high",
        "vault 800 mm along the ridge, 500 mm wide, 400 mm high",
    ):
        assert said in text


def test_a_loose_part_or_a_named_load_that_fails_is_named_first():
    found = examined("STANDS")
    failing = [
        replace(found.overturning, kind=Kind.LOOSE, subject="cap", passes=False),
        replace(found.sliding, kind=Kind.LOOSE_SLIDING, subject="cap", passes=False),
        replace(
            found.overturning,
            kind=Kind.LOAD,
            subject="a sitter",
            passes=False,
            remark="overturning",
        ),
    ]
    lines = verdict(replace(found, checks=(*found.checks, *failing)), EVERYTHING)
    text = flat(" ".join(line.text for line in lines))
    assert "FASTEN WHAT FAILS." in text
    assert "but not its loose cap nor under the load 'a sitter'" in text
    assert "Worst of tipping, sliding and bearing: overturning." in text
