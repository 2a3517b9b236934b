"""The public names, and the house: its rooms, its arrows, what importing it costs."""

import ast
import subprocess
import sys
import tomllib
from graphlib import TopologicalSorter
from pathlib import Path

import pytest
import verdict_designs

import yardfast as yf

ROOT = Path(yf.__file__).resolve().parent
ARROWS = (
    "units",
    "references",
    "materials",
    "design",
    "loads",
    "statics",
    "checks",
    "report",
    "page",
    "cli",
)
"""Each room may look at those before it; units serves all, and looks at none."""
NO_ROOMS = {"tests", "examples", "benchmarks", "build", "dist"}


def test_public_names_are_those_listed():
    assert set(yf.__all__) == set(yf._PLACES)
    for name in yf.__all__:
        assert getattr(yf, name) is not None
        assert name in dir(yf)
    with pytest.raises(AttributeError, match="nonsense"):
        _ = yf.nonsense


def test_a_design_is_read_and_checked(tmp_path):
    file = tmp_path / "light.toml"
    file.write_text(verdict_designs.HARBOUR, encoding="utf-8")
    design = yf.read(file)
    result = yf.check(design)
    assert isinstance(design, yf.Design)
    assert isinstance(result, yf.Result)
    assert result.name == "Harbour light"
    assert result.file == str(file)
    assert result.needs_anchors
    assert not result.passes
    assert result.to_dict() == yf.check(file).to_dict()
    assert result.limits.tipping_gust < yf.Q("58 mph")
    assert result.to_text().startswith("Harbour light")


def test_sizes_are_those_of_the_command():
    design = yf.read(ROOT / "examples" / "seat-box.toml")
    sizes = yf.size(design)
    told = {one["kind"]: one for one in sizes.to_dict()["remedies"]}
    assert set(told) == {one.kind for one in sizes.remedies}
    for one in sizes.remedies:
        assert (one.value is None) == (told[one.kind]["value"] is None)
        if one.value is not None:
            assert one.value.to_base_units().magnitude == pytest.approx(told[one.kind]["value"])
    assert sizes["ballast"].value == yf.Q("8 kg")
    assert repr(sizes).startswith("<Sizes of 'Seat box': ")
    assert "\n" not in repr(sizes)


def test_a_wrong_design_carries_all_its_faults(tmp_path):
    file = tmp_path / "wrong.toml"
    wrong = verdict_designs.HARBOUR.replace("'20 in'", "20").replace("'48 in'", "'48 lb'")
    file.write_text(wrong, encoding="utf-8")
    with pytest.raises(yf.DesignError) as raised:
        yf.read(file)
    assert [fault.key for fault in raised.value.faults] == ["across", "height"]
    assert all(isinstance(fault, yf.Fault) for fault in raised.value.faults)


def test_velocity_pressure_of_the_map_wind():
    # ASCE/SEI 7-22 Eq. 26.10-1: 0.613 x 0.85 x (105 mph = 46.94 m/s)2 = 1148 Pa
    q = yf.velocity_pressure("105 mph", method="ASCE 7-22", exposure="C", height="5 ft")
    assert q.to("Pa").magnitude == pytest.approx(1148.0, abs=0.5)


def test_a_number_beside_its_unit_is_a_quantity():
    # The international mile is 1609.344 m: NIST Special Publication 811, appendix B.
    assert yf.Q(105, "mph").to("m/s").magnitude == pytest.approx(105 * 1609.344 / 3600)
    assert yf.Q(5, "ft") == yf.Q("5 ft")
    with pytest.raises(yf.UnitError, match="smoot"):
        yf.Q(1, "smoot")
    for wrong in (True, float("nan"), "x", None):
        with pytest.raises(yf.UnitError):
            yf.Q(wrong, "mph")
    with pytest.raises(yf.UnitError, match="with its unit"):
        yf.Q(105)


def test_arrays_of_quantities_are_taken_wherever_text_is():
    """Each value of an array gives what it gives alone; the texts of a list are an array."""
    winds, heights = yf.Q([90, 105], "mph"), yf.Q(["5 ft", "480 in"])
    asce = {"method": "ASCE 7-22", "exposure": "C"}
    q = yf.velocity_pressure(winds, height=heights, **asce)
    alone = [
        yf.velocity_pressure("90 mph", height="5 ft", **asce),
        yf.velocity_pressure("105 mph", height="40 ft", **asce),
    ]
    assert q.magnitude == pytest.approx([each.magnitude for each in alone])
    nails = yf.Q(["0.131 in", "0.162 in"])
    held = yf.withdrawal("nail", nails, 0.42)
    assert held.magnitude[1] == yf.withdrawal("nail", "0.162 in", 0.42).magnitude
    side = yf.lateral(nails, "3/4 in", "1 1/2 in", 0.42, 0.5, yf.Q(100_000, "psi"))
    assert side.value.magnitude.shape == side.mode.shape == (2,)
    deep = yf.embedment(yf.Q([100, 200], "lbf"), "4 ft", "150 psf/ft", "4 in")
    alone = yf.embedment("200 lbf", "4 ft", "150 psf/ft", "4 in")
    assert deep[1].magnitude == pytest.approx(alone.magnitude, rel=1e-14)
    years = yf.return_period(yf.Q([60, 75], "mph"), {10: "60 mph", 50: "75 mph"})
    assert years == pytest.approx([10.0, 50.0])
    with pytest.raises(ValueError, match="negative"):
        yf.velocity_pressure(yf.Q([90, -1], "mph"), height="5 ft", **asce)


def test_a_result_and_a_design_are_shown_in_one_line(tmp_path):
    file = tmp_path / "light.toml"
    file.write_text(verdict_designs.HARBOUR, encoding="utf-8")
    design = yf.read(file)
    for shown in (repr(design), repr(yf.check(design))):
        assert "Harbour light" in shown
        assert len(shown.replace(str(file), "")) < 79
        assert "\n" not in shown


def test_its_types_are_told_to_other_type_checkers():
    assert (ROOT / "py.typed").is_file()


def test_importing_the_package_imports_nothing_heavy():
    code = (
        "import sys; before = set(sys.modules); import yardfast; print(set(sys.modules) - before)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ast.literal_eval(done.stdout) <= {"yardfast"}


def _packages():
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    return settings["tool"]["setuptools"]["packages"], settings["tool"]["pyright"]["include"]


def _rooms():
    return sorted(
        path.parent.relative_to(ROOT)
        for path in ROOT.rglob("__init__.py")
        if path.parent != ROOT
        and not path.relative_to(ROOT).parts[0].startswith(".")
        and path.relative_to(ROOT).parts[0] not in NO_ROOMS
    )


def test_every_room_is_installed_and_type_checked():
    packages, checked = _packages()
    names = {"yardfast", *(f"yardfast.{'.'.join(room.parts)}" for room in _rooms())}
    assert set(packages) == names
    assert {room.parts[0] for room in _rooms()} <= set(checked)


def test_every_data_file_of_a_room_is_installed():
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    given = settings["tool"]["setuptools"]["package-data"]
    packed = {
        file
        for package, patterns in given.items()
        for pattern in patterns
        for file in ROOT.joinpath(*package.split(".")[1:]).glob(pattern)
    }
    data = {
        file
        for room in ARROWS
        for file in (ROOT / room).rglob("*")
        if file.is_file() and file.suffix not in (".py", ".pyc")
    }
    assert data <= packed
    assert {file.name for file in packed} >= {"sheet.typ", "calculation.typ", "drawing.typ"}


def test_modules_of_the_root_are_these_and_none_hides_a_standard_one():
    modules = {path.name for path in ROOT.glob("*.py")}
    assert modules == {"__init__.py", "__main__.py"}
    names = {path.stem for path in ROOT.glob("*.py")} | {room.parts[0] for room in _rooms()}
    assert not (names - {"__init__", "__main__"}) & set(sys.stdlib_module_names)


def test_no_room_looks_up_the_arrow():
    assert {room.parts[0] for room in _rooms()} == set(ARROWS)
    wrong = [
        f"{file.relative_to(ROOT)} looks at {room}"
        for here, name in enumerate(ARROWS)
        for file in (ROOT / name).rglob("*.py")
        for room in _looks_at(file)
        if room in ARROWS and ARROWS.index(room) > here
    ]
    assert wrong == []


@pytest.mark.parametrize("room", ARROWS)
def test_no_folder_leads_back_to_itself(room):
    """A folder of a room stands above or beneath another, by all that its modules ever import."""
    leads: dict[tuple[str, ...], set[tuple[str, ...]]] = {}
    for file in (ROOT / room).rglob("*.py"):
        here = file.parent.relative_to(ROOT).parts
        for path in _paths(file):
            to = path
            while not ROOT.joinpath(*to).is_dir():
                to = to[:-1]
            if to[:1] == (room,) and to != here and (file.name, to) not in _ASK_EACH_OTHER:
                leads.setdefault(here, set()).add(to)
    TopologicalSorter(leads).prepare()  # CycleError names the circle


_ASK_EACH_OTHER = {
    ("tied.py", ("checks", "sizing")),
    ("examination.py", ("checks", "sizing")),
}
"""What would do is found by verdicts of pieces that are tried, and a verdict offers what does."""


def test_rooms_of_the_checks_keep_their_own_order():
    """How it stands, what holds, what acts, what is fastened and strong; what would do on top."""
    first = (
        "judged",
        "stability",
        "anchoring",
        "timber",
        "fasteners",
        "acting",
        "joints",
        "members",
        "plates",
        "seams",
    )
    inner = (*first, "odds", "stated", "sizing", "verification")
    folders = {path.name for path in (ROOT / "checks").iterdir() if path.is_dir()} - {"__pycache__"}
    assert folders == set(inner)
    for here, name in enumerate(inner):
        for file in (ROOT / "checks" / name).rglob("*.py"):
            seen = {path[1] for path in _paths(file) if path[0] == "checks" and len(path) > 1}
            assert not seen & set(inner[here + 1 :]), file
            assert name not in first or seen <= set(inner), file


def _looks_at(file):
    """Return the rooms that a module imports from."""
    return (path[0] for path in _paths(file))


def _paths(file):
    """Return what a module imports from, from the root; refuse absolute imports of the package."""
    inside = file.parent.relative_to(ROOT).parts
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            assert not any(alias.name.startswith("yardfast") for alias in node.names), file
        if not isinstance(node, ast.ImportFrom):
            continue
        assert not (node.module or "").startswith("yardfast"), file
        if node.level == 0:
            continue
        base = inside[: len(inside) - node.level + 1]
        path = (*base, *(node.module or "").split(".")) if node.module else base
        yield from ((*path, alias.name) for alias in node.names)


def test_no_file_is_called_a_lumber_room():
    vague = {"utils", "helpers", "common", "core", "manager", "base", "misc"}
    assert not {path.stem for room in ARROWS for path in (ROOT / room).rglob("*.py")} & vague
