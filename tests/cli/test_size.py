"""`yardfast size`: what it tells, what it writes and reads again, and what it refuses."""

import json
import subprocess
import sys
import tomllib
from pathlib import Path

import numpy as np
import pytest
from verdict_designs import block, design_text

from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.checks.sizing.laid_weight import with_weight
from yardfast.checks.sizing.ways import REMEDY_KINDS
from yardfast.checks.sizing.wider_foot import with_width
from yardfast.cli import main
from yardfast.design.model import Design
from yardfast.loads.wind.site import Site
from yardfast.report.screens.first_screen import first_screen

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
POST = """\
[[part]]
name     = 'foot'                # two boards
shape    = 'plate'
sides    = 4
across   = '16 in'               # flat to flat
thickness = '2 in'
material = 'white oak'

[[part]]
name     = 'post'
shape    = 'solid'
on       = 'foot'
sides    = 4
bottom   = '8 in'
top      = '6 in'
height   = '40 in'               # straight up
density  = '15 lb/ft^3'
# a cap comes later
"""
LIGHT = design_text(POST, wind="58 mph", ground="paving").replace(
    "wind = '58 mph'", "wind = '58 mph'   # a warning"
)
BARE = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph", ground="paving")
STANDS = design_text(block("24 in", "24 in", "8 in", "150 lb/ft^3"), wind="35 mph", ground="paving")
HOPELESS = design_text(
    block("10 ft", "10 ft", "60 ft", "1 kg/m^3"), wind="150 mph", ground="paving"
)


@pytest.fixture
def folder(tmp_path, monkeypatch):
    for name, text in (
        ("light", LIGHT),
        ("bare", BARE),
        ("stands", STANDS),
        ("hopeless", HOPELESS),
        ("wrong", LIGHT.replace("'16 in'", "16")),
    ):
        (tmp_path / f"{name}.toml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def said(capsys, *words):
    """Run the command; return its status, standard output and standard error."""
    status = main(["size", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


# --- what is told ------------------------------------------------------------------------------


def test_json_names_each_remedy_in_whole_build_steps(folder, capsys):
    status, out, err = said(capsys, "light.toml", "--format", "json")
    found = json.loads(out)
    assert (status, err) == (0, "")
    assert found["format"] == 1
    assert found["file"] == "light.toml"
    assert found["name"] == "Piece"
    assert len(found["fingerprint"]) == 12
    keys = {"kind", "value", "unit", "feasible", "governs", "reason"}
    assert all(keys <= set(remedy) for remedy in found["remedies"])
    units = {remedy["kind"]: remedy["unit"] for remedy in found["remedies"]}
    assert units == {
        "base width": "m",
        "ballast": "kg",
        "anchors": "N",
        "guys": "N",
        "height": "m",
        "wind": "m/s",
    }
    steps = {"ballast": 5 * 0.45359237, "height": 0.0254, "wind": 0.44704, "base width": 0.0127}
    for remedy in found["remedies"]:
        assert remedy["feasible"] or remedy["reason"]
        if remedy["feasible"] and remedy["kind"] in steps:
            number = remedy["value"] / steps[remedy["kind"]]
            assert number == pytest.approx(round(number), abs=1.0e-6)
    widths = [point for point in found["curve"] if point["kind"] == "base width"]
    assert [point["present"] for point in widths] == [True] + [False] * 8
    assert widths[0]["value"] == pytest.approx(16 * 0.0254)
    assert widths[0]["forecast_tipping_gust_m_s"] < widths[-1]["forecast_tipping_gust_m_s"]
    assert {point["unit"] for point in found["curve"]} == {"m", "kg"}


def test_people_read_a_line_a_remedy_in_80_columns(folder, capsys):
    status, out, _ = said(capsys, "light.toml", "--all")
    lines = out.splitlines()
    assert status == 0
    assert max(map(len, lines)) <= 80
    assert "\x1b" not in out
    assert "each way alone" in out
    for kind in ("as it is", "base width", "ballast", "anchors", "height", "wind"):
        assert sum(line.startswith(f"  {kind}") for line in lines) == 1
    for word in ("tips", "slides", "act at", "Not checked: ", "No promise"):
        assert word in out
    assert sum(line.startswith("* ") for line in lines) == 1


@pytest.mark.parametrize(
    ("file", "status", "word"),
    [
        ("stands", 0, "none of these is needed"),
        ("hopeless", 1, "NOTHING HERE HOLDS IT"),
    ],
)
def test_the_status_tells_whether_a_remedy_exists(folder, capsys, file, status, word):
    found = said(capsys, f"{file}.toml")
    assert found[0] == status
    assert word in " ".join(found[1].split())


def test_what_is_tried_is_told_on_standard_error_of_a_terminal_alone(folder, capsys, monkeypatch):
    _, plain, quiet = said(capsys, "light.toml", "--format", "json")
    assert quiet == ""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    status, out, err = said(capsys, "light.toml", "--format", "json")
    assert (status, out) == (0, plain)
    tried = [each.strip() for each in err.split("\r") if each.strip()]
    assert len(tried) == len(REMEDY_KINDS)
    assert all(each.startswith("trying: ") for each in tried)
    assert err.endswith("\r")  # where it stood the answer goes on


def test_foot_weight_and_stakes_stand_in_one_table_on_one_screen(folder, capsys):
    _, out, _ = said(capsys, "light.toml")
    lines = out.splitlines()
    assert len(lines) <= 22
    assert max(map(len, lines)) <= 79
    for label in ("As it is", "Wider", "Weight", "Take"):
        assert sum(line.startswith(f"  {label} ") for line in lines) == 1
    assert "untied" in out
    assert "tied with" in out


@pytest.mark.parametrize("file", ["light", "bare"])
def test_what_check_and_size_say_is_one_computation(folder, capsys, file):
    # 60 columns are so narrow that no picture stands in the first screen
    _, out, _ = said(capsys, f"{file}.toml")
    lines = first_screen(examine(read(f"{file}.toml")), 60)
    checked = " ".join(" ".join(line.text for line in lines).split())
    told = out[out.index("  Take") :].split("  Or ")[0].split("Take", 1)[1]
    first = " ".join(told.split()).split(". ")[0]
    assert first[1:] in checked
    _, listed, _ = said(capsys, f"{file}.toml", "--format", "json")
    ballast = next(r for r in json.loads(listed)["remedies"] if r["kind"] == "ballast")
    pounds = round(ballast["value"] / 0.45359237)
    assert f"{pounds} lb low in the foot" in checked


@pytest.mark.parametrize("name", ["light-tower", "blade-wheel"])
def test_the_weight_that_is_told_holds_it_and_does_not_sink_in(name):
    found = examine(read(EXAMPLES / f"{name}.toml"))
    weight = found.verdict.tied.weight
    ground = ground_parts(found.structure)
    laid = examine(with_weight(found.design, ground, weight))
    less = examine(with_weight(found.design, ground, weight - 5.0 * 0.45359237))
    of_whole = {"sliding", "overturning", "bearing"}
    assert all(check.passes for check in laid.checks if check.name in of_whole)
    assert not all(check.passes for check in less.checks if check.name in of_whole)


def test_a_wider_foot_is_a_plate_beneath_a_ring_so_that_nothing_stands_over_its_hole():
    # A ring 24 in across of 2x6s is open 13 in: a tower 18 in across stood over it from 29 in on
    tower = read(EXAMPLES / "light-tower.toml")
    wide = with_width(tower, ground_parts(examine(tower).structure), 30.0 * 0.0254)
    assert wide.parts[-1].name == "wider foot"
    assert np.ptp(examine(wide).structure.footprint, axis=0).max() == pytest.approx(30.0 * 0.0254)


def test_on_paving_anchors_are_bolts(folder, capsys):
    assert "into a slab, one at each " in " ".join(said(capsys, "bare.toml")[1].split())


def test_a_wrong_file_leaves_standard_output_empty(folder, capsys):
    status, out, err = said(capsys, "wrong.toml", "--format", "json")
    assert (status, out) == (2, "")
    assert "line 15  foot, across" in err


# --- what is written ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("file", "remedy"),
    [(file, kind) for file in ("light", "bare") for kind in ("ballast", "anchors", "wind")]
    + [("light", "base width"), ("bare", "base width"), ("light", "guys")],
)
def test_what_is_written_then_passes(folder, capsys, file, remedy):
    status, out, err = said(capsys, f"{file}.toml", "--write", "new.toml", "--remedy", remedy)
    assert (status, err) == (0, "")
    assert "it neither tips nor slides" in " ".join(out.split())
    main(["check", "new.toml", "--format", "json"])
    checks = json.loads(capsys.readouterr().out)["checks"]
    assert all(c["passes"] for c in checks if c["name"] in ("overturning", "sliding"))


def test_a_lower_piece_is_written_with_every_height_scaled(folder, capsys):
    heavy = LIGHT.replace("'15 lb/ft^3'", "'400 lb/ft^3'").replace("58 mph", "115 mph")
    heavy = heavy.replace("'40 in'", "'80 in'")
    (folder / "heavy.toml").write_text(heavy, encoding="utf-8")
    status, out, _ = said(capsys, "heavy.toml", "--write", "low.toml", "--remedy", "height")
    assert status == 0, out
    before, after = read("heavy.toml"), read("low.toml")
    assert after.parts[0].shape == before.parts[0].shape
    assert after.parts[1].shape.height < before.parts[1].shape.height
    assert after.parts[1].shape.bottom == before.parts[1].shape.bottom


def test_comments_and_order_stay(folder, capsys):
    assert said(capsys, "light.toml", "--write", "new.toml", "--remedy", "ballast")[0] == 0
    text = (folder / "new.toml").read_text(encoding="utf-8")
    assert text.startswith(LIGHT)
    assert tomllib.loads(text)["part"][-1]["name"] == "ballast"
    assert said(capsys, "light.toml", "--write", "calm.toml", "--remedy", "wind")[0] == 0
    old, new = LIGHT.splitlines(), (folder / "calm.toml").read_text(encoding="utf-8").splitlines()
    differing = [pair for pair in zip(old, new, strict=True) if pair[0] != pair[1]]
    assert len(differing) == 1
    # what was said of the old wind is not true of this one
    assert differing[0][1].endswith("# the greatest that it stands as it is")


def test_a_table_between_the_parts_stays_between_them(folder, capsys):
    head, _, rest = LIGHT.partition("[site]")
    site, _, parts = rest.partition("[[part]]")
    first, _, second = parts.partition("[[part]]")
    text = f"{head}[[part]]{first}[site]{site}[[part]]{second}"
    (folder / "odd.toml").write_text(text, encoding="utf-8")
    assert said(capsys, "odd.toml", "--write", "new.toml", "--remedy", "wind")[0] == 0
    new = (folder / "new.toml").read_text(encoding="utf-8")
    assert _without_wind(new) == _without_wind(text)


def _without_wind(text):
    return [line for line in text.splitlines() if not line.startswith("wind")]


def test_a_width_is_written_as_it_was_measured(folder, capsys):
    text = LIGHT.replace("across   = '16 in' ", "across_points = '22 in' ")
    text = text.replace("'white oak'", "'concrete'")
    (folder / "points.toml").write_text(text, encoding="utf-8")
    assert said(capsys, "points.toml", "--write", "new.toml", "--remedy", "base width")[0] == 0
    assert "across_points = '" in (folder / "new.toml").read_text(encoding="utf-8")
    across = read("new.toml").parts[0].shape.plan.across
    assert across / 0.0127 == pytest.approx(round(across / 0.0127), abs=1.0e-3)


@pytest.mark.parametrize("change", ["\r\n", "\ufeff"])
def test_any_text_that_is_read_can_be_written_changed(folder, capsys, change):
    text = LIGHT.replace("\n", change) if change == "\r\n" else change + LIGHT
    (folder / "odd.toml").write_bytes(text.encode())
    assert said(capsys, "odd.toml", "--write", "new.toml", "--remedy", "base width")[0] == 0


def test_a_text_that_takes_no_further_part_is_left_alone(folder, capsys):
    head, _, part = BARE.partition("[[part]]")
    row = ", ".join(line for line in part.splitlines() if line)
    (folder / "odd.toml").write_text(f"part = [{{ {row} }}]\n{head}", encoding="utf-8")
    status, out, err = said(capsys, "odd.toml", "--write", "new.toml", "--remedy", "ballast")
    assert (status, out) == (2, "")
    assert "[[part]] under a heading of its own" in err
    assert not (folder / "new.toml").exists()


def test_what_could_not_be_read_again_is_not_written(folder, capsys, monkeypatch):
    def spoiled(old: Design, new: Design, folder: Path) -> str:
        return old.text.replace("'16 in'", "16")

    monkeypatch.setattr("yardfast.cli.files.changed_text.changed_text", spoiled)
    status, out, err = said(capsys, "light.toml", "--write", "new.toml", "--remedy", "ballast")
    assert status == 1
    assert "nothing was written" in out
    assert err.startswith("new.toml: ")
    assert "line 15  foot, across" in err
    assert not (folder / "new.toml").exists()


def test_an_existing_file_is_never_written_over(folder, capsys):
    (folder / "mine.toml").write_text("mine", encoding="utf-8")
    for file in ("mine.toml", "light.toml"):
        before = (folder / file).read_text(encoding="utf-8")
        status, out, err = said(capsys, "light.toml", "--write", file, "--remedy", "ballast")
        assert (status, out) == (2, "")
        assert "exists already" in err
        assert (folder / file).read_text(encoding="utf-8") == before


def test_nothing_is_written_where_nothing_is_needed_or_nothing_helps(folder, capsys):
    status, out, _ = said(capsys, "stands.toml", "--write", "new.toml", "--remedy", "ballast")
    assert status == 0
    assert "nothing was written" in out
    status, out, _ = said(capsys, "hopeless.toml", "--write", "new.toml", "--remedy", "ballast")
    assert status == 1
    assert "Nothing was written" in " ".join(out.split())
    assert not (folder / "new.toml").exists()


@pytest.mark.parametrize(
    ("units", "most"), [("imperial", "even under 5,000 lb"), ("metric", "even under 2,266 kg")]
)
def test_why_nothing_helps_is_told_in_the_units_of_the_file(folder, capsys, units, most):
    text = HOPELESS.replace("units = 'imperial'", f"units = '{units}'")
    assert f"units = '{units}'" in text
    (folder / "hopeless.toml").write_text(text, encoding="utf-8")
    _, out, _ = said(capsys, "hopeless.toml", "--write", "new.toml", "--remedy", "ballast")
    assert most in " ".join(out.split())


def test_what_is_written_but_fails_is_said_to_fail(folder, capsys, monkeypatch):
    def unchanged(old: Design, new: Design, folder: Path) -> str:
        return old.text

    monkeypatch.setattr("yardfast.cli.files.changed_text.changed_text", unchanged)
    status, out, _ = said(capsys, "light.toml", "--write", "new.toml", "--remedy", "ballast")
    assert status == 1
    assert "but fails: sliding, tipping" in out
    assert "passes" not in out


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ([], "either a FILE, or --kind"),
        (["light.toml", "--kind", "tower"], "either a FILE, or --kind"),
        (["light.toml", "--sides", "6"], "--sides goes with --kind"),
        (["light.toml", "--remedy", "ballast"], "--remedy says what --write NEW.toml is to write"),
        (["light.toml", "--write", "new.toml", "--remedy", "balast"], "Did you mean 'ballast'?"),
        (["light.toml", "--write", "no/new.toml", "--remedy", "wind"], "there is no folder"),
        (
            ["light.toml", "--write", "new.toml", "--remedy", "wind", "--format", "json"],
            "without --format json",
        ),
        (["light.toml", "--write", "nul\0.toml", "--remedy", "wind"], "no name for a file"),
        (["nothing.toml"], "no such file"),
        (["--kind", "sign"], "tower, well, post, wheel"),
        (["--kind", "tower", "--sides", "6"], "--height, --body"),
        (["--kind", "wheel", "--foot", "2 ft, 2x6 flat"], "--sides"),
        (["--kind", "tower", "--sides", "2", "--height", "6 ft", "--body", "9 in"], "--sides"),
        (["--kind", "tower", "--sides", "6", "--height", "6", "--body", "9 in"], "--height"),
    ],
)
def test_what_does_not_go_together_is_answered_on_standard_error(folder, capsys, words, answer):
    status, out, err = said(capsys, *words)
    assert (status, out) == (2, "")
    assert answer in err
    assert not (folder / "new.toml").exists()


def test_what_the_first_screen_says_is_written_without_naming_it(folder, capsys):
    status, out, _ = said(capsys, "light.toml", "--write", "new.toml")
    assert status == 0
    assert "with the remedy 'anchors'" in out
    assert "[[anchor]]" in (folder / "new.toml").read_text(encoding="utf-8")


# --- what it imports ---------------------------------------------------------------------------


def test_the_writer_of_files_is_imported_only_to_write(folder):
    code = (
        "import sys; from yardfast.cli import main; main(['size', 'stands.toml']); "
        "print([m for m in ('tomlkit', 'pint', 'rich', 'scipy') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_wind_below_the_maps_is_written_as_ultimate(folder, capsys):
    text = design_text(
        block("30 in", "30 in", "30 in", "30 lb/ft^3"),
        method="ASCE 7-22",
        wind="120 mph",
        ground="paving",
        site="topographic = 3",
    )
    (folder / "code.toml").write_text(text, encoding="utf-8")
    status, out, _ = said(capsys, "code.toml", "--write", "new.toml", "--remedy", "wind")
    assert status == 0, out
    site = read("new.toml").table(Site)
    assert site.wind < 85 * 0.44704
    assert site.wind_kind == "ultimate"


@pytest.mark.parametrize(
    ("word", "kind"),
    [("stakes", "anchors"), ("Bolts", "anchors"), ("weight", "ballast"), ("ropes", "guys")],
)
def test_a_remedy_is_taken_by_the_word_of_the_screens(folder, capsys, word, kind):
    status, out, err = said(capsys, "light.toml", "--write", "new.toml", "--remedy", word)
    assert (status, err) == (0, "")
    assert f"'{kind}'" in out
    said(capsys, "light.toml", "--write", "same.toml", "--remedy", kind)
    assert Path("new.toml").read_text("utf-8") == Path("same.toml").read_text("utf-8")


def test_a_wider_foot_is_a_base_width(folder, capsys):
    _, out, err = said(capsys, "hopeless.toml", "--write", "new.toml", "--remedy", "wider foot")
    assert (out.startswith("base width alone is no remedy"), err) == (True, "")


def test_help_lists_every_kind_of_remedy(capsys):
    assert main(["size", "--help"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert all(f"'{kind}'" in told for kind in REMEDY_KINDS)


def test_an_inset_in_mm_stays_in_mm(folder, capsys):
    # the table of anchors sets a slab bolt 40 mm from the foot's edge: no tape in inches has that
    said(capsys, "light.toml", "--write", "new.toml", "--remedy", "bolts")
    (anchor,) = tomllib.loads(Path("new.toml").read_text("utf-8"))["anchor"]
    assert anchor["inset"] == "40 mm"
