"""Recipes of DEVELOPERS.md for hints, commands and books, each followed in a copy of the house."""

from shutil import copytree

import pytest
from recipes import DESIGN, changed, found, house, numbers, ran

pytestmark = pytest.mark.slow  # each copies the house and starts a Python or two of its own

CRATE = DESIGN.format(ground="firm lawn", material="softwood plywood")
WIND = "wind = '58 mph'"


def mended(folder, text):
    """Return what ``check`` says is wrong with a text, and the text as ``mend`` leaves it."""
    (folder / "crate.toml").write_text(text)
    told = ran(folder, "-m", "yardfast", "check", "crate.toml")
    assert told.returncode == 2, told.stdout
    ran(folder, "-m", "yardfast", "mend", "--yes", "crate.toml")
    return told.stderr, (folder / "crate.toml").read_text(encoding="utf-8")


def test_a_hint_takes_a_word(tmp_path):
    """A word of one meaning is put right by ``mend``; one with a question mark is only asked."""
    words = "\n    'breeze': \"'wind'\",\n    'draught': \"'wind'?\","
    changed(house(tmp_path) / "loads/site_table.py", [("\n_WORDS = {", f"\n_WORDS = {{{words}")])
    told, text = mended(tmp_path, CRATE.replace("wind =", "breeze ="))
    assert "write  wind\n" in told
    assert WIND in text
    told, text = mended(tmp_path, CRATE.replace("wind =", "draught ="))
    assert "write  wind ?\n" in told
    assert WIND not in text


@pytest.mark.parametrize(("new", "can_be_read"), [("'wet lawn'", True), ("'quay lawn'", False)])
def test_what_a_fault_says_to_type_is_tried_before_it_is_shown(tmp_path, new, can_be_read):
    said = f'"no paving here", "ground = {new}", Instead("{new}", sure=True)'
    refuse = f'    if row.text("ground") == "paving":\n        row.refuse("ground", {said})\n'
    changed(
        house(tmp_path) / "loads/site_table.py",
        [
            ("import Key, TableSpec", "import Instead, Key, TableSpec"),
            ("    _check_safety(row, basis)\n", f"    _check_safety(row, basis)\n{refuse}"),
        ],
    )
    told, text = mended(tmp_path, CRATE.replace("firm lawn", "paving"))
    assert ("write  'wet lawn'" in told) is can_be_read
    assert "'quay lawn'" not in told.replace("ground = 'quay lawn'", "")
    ground = new if can_be_read else "'paving'"
    assert f"ground = {ground}" in text


COMMAND = '''"""``yardfast lift FILE``: how heavy a piece is to lift."""

from argparse import Namespace

from ...checks.inputs import read
from ...design.structure import build_structure
from .. import screen
from ..refused import RefusedError


def run(arguments: Namespace) -> int:
    """Tell how heavy a piece is; refuse where two cannot lift it."""
    weight = build_structure(read(arguments.file)).weight("heavy")
    if weight > 2.0 * 250.0:
        raise RefusedError("two cannot lift it", "")
    screen.show_json({"weight": weight})
    return 0
'''


def test_a_command_takes_a_row_and_a_file(tmp_path):
    copy = house(tmp_path)
    row = '    "lift": Command("how heavy it is to lift", "crate.toml", "lift", (_FILE,)),\n'
    changed(
        copy / "cli/command_table.py", [('    "verify": Command(', f'{row}    "verify": Command(')]
    )
    (copy / "cli/commands/lift.py").write_text(COMMAND, encoding="utf-8")
    assert "how heavy it is to lift" in ran(tmp_path, "-m", "yardfast", "--help").stdout
    (tmp_path / "crate.toml").write_text(CRATE.replace("30 in", "9 in"))
    done = ran(tmp_path, "-m", "yardfast", "lift", "crate.toml")
    assert (done.returncode, '"weight"' in done.stdout) == (0, True), done.stderr
    (tmp_path / "crate.toml").write_text(CRATE.replace("3/4 in", "5 in"))
    done = ran(tmp_path, "-m", "yardfast", "lift", "crate.toml")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == "yardfast lift: two cannot lift it\n"
    (tmp_path / "crate.toml").write_text(CRATE.replace("3/4 in", "3/4 inchworm"))
    done = ran(tmp_path, "-m", "yardfast", "lift", "crate.toml")
    assert (done.returncode, done.stdout) == (2, "")
    assert "crate.toml" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_standard_for_wind_takes_a_folder_a_name_and_its_own_keys(tmp_path):
    """The gust of a mast by the quay, as a folder of its own: a tenth more than is written."""
    copy = house(tmp_path)
    loads = copy / "loads"
    copytree(loads / "gust", loads / "quay")
    changed(
        loads / "quay/standard.py",
        [
            ('"gust", "forecast"', '"quay post", "quay mast"'),
            ("float(site.wind * ratio)", "float(site.wind * ratio * site.quay_factor)"),
            ("GUST = ", "QUAY = "),
        ],
    )
    changed(
        loads / "methods.py",
        [
            (
                "from .gust.standard import GUST\n",
                "from .gust.standard import GUST\nfrom .quay.standard import QUAY\n",
            ),
            ("(GUST, ASCE7, EN1991)", "(GUST, ASCE7, EN1991, QUAY)"),
        ],
    )
    key = '    Key("quay_factor", "number", bounds=ANNEX),\n'
    given = '        quay_factor=row.quantity("quay_factor") or 1.0,\n'
    changed(
        loads / "site_table.py",
        [
            ('    Key("wind_source"', f'{key}    Key("wind_source"'),
            ("        orography=", f"{given}        orography="),
        ],
    )
    field = "    orography: float | None = None\n"
    changed(loads / "wind/site.py", [(field, f"{field}    quay_factor: float = 1.0\n")])
    gust = numbers(found(tmp_path, CRATE.replace("58 mph", "63.8 mph")))
    method = "method = 'quay mast'\nquay_factor = 1.1"
    mast = numbers(found(tmp_path, CRATE.replace("method = 'forecast'", method)))
    for (name, *of_mast), (like, *of_gust) in zip(mast, gust, strict=True):
        assert name == like
        for one, other in zip(of_mast, of_gust, strict=True):
            assert one == (other if other is None else pytest.approx(other, rel=1e-9))


def test_a_book_of_timber_takes_a_folder_and_its_name_twice(tmp_path):
    """A book that says what NDS says of all but what a fastener holds: half as much of that."""
    copy = house(tmp_path)
    timber = copy / "checks/timber"
    copytree(timber / "nds", timber / "quay")
    changed(
        timber / "quay/standard.py",
        [
            ('    name = "NDS"\n    title = "NDS"\n', '    name = title = "quay"\n'),
            ("NDS_BOOK = ", "QUAY_BOOK = "),
        ],
    )
    changed(
        timber / "quay/fastener_capacity.py",
        [
            ("out=out,", "out=out / 2.0,"),
            ("head=head,", "head=head / 2.0,"),
            ("* C_lateral if", "* C_lateral / 2.0 if"),
            ('book="NDS"', 'book="quay"'),
        ],
    )
    changed(
        timber / "books.py",
        [
            (
                "BOOKS: Mapping",
                "def _quay() -> TimberBook:\n"
                "    from .quay.standard import QUAY_BOOK\n\n"
                "    return QUAY_BOOK\n\n\nBOOKS: Mapping",
            ),
            ("EN1995: _en1995}", 'EN1995: _en1995, "quay": _quay}'),
        ],
    )
    changed(copy / "loads/combinations.py", [("(NDS, EN1995)\n", '(NDS, EN1995, "quay")\n')])
    tower = (copy / "examples/light-tower.toml").read_text(encoding="utf-8")
    nds = found(tmp_path, tower)["joints"][0]
    quay = found(tmp_path, tower.replace("[site]\n", "[site]\ntimber = 'quay'\n"))["joints"][0]
    for what in ("withdrawal_N", "head_pull_through_N", "lateral_N"):
        assert quay[what] == pytest.approx(nds[what] / 2.0), what
        assert nds[what] > 0.0
