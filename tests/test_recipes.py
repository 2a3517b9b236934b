"""Recipes of DEVELOPERS.md, each followed to the letter in a copy of the house, and run there."""

import pytest
from pypdf import PdfReader
from recipes import DESIGN, changed, found, house, numbers, ran, rows_as

pytestmark = pytest.mark.slow  # each copies the house and starts a Python or two of its own


def test_a_material_takes_a_row(tmp_path):
    rows_as(house(tmp_path) / "references/materials.csv", "softwood plywood", "quay board")
    assert "quay board" in ran(tmp_path, "-m", "yardfast", "materials").stdout
    as_named = numbers(found(tmp_path, material="quay board"))
    wind = ("overturning", "sliding")
    like = {name: each for name, *each in numbers(found(tmp_path)) if name in wind}
    assert {name: each for name, *each in as_named if name in wind} == like


def test_a_ground_takes_rows_of_three_tables(tmp_path):
    copy = house(tmp_path)
    for table in ("grounds", "ground_values", "ground_friction"):
        rows_as(copy / f"references/ground/{table}.csv", "firm lawn", "quay lawn")
    assert "quay lawn" in ran(tmp_path, "-m", "yardfast", "grounds").stdout
    named, like = found(tmp_path, ground="quay lawn"), found(tmp_path)
    assert numbers(named) == numbers(like)
    assert named["verdict"]["word"] == like["verdict"]["word"]


def test_a_kind_of_piece_takes_a_file_and_its_name(tmp_path):
    copy = house(tmp_path)
    tower = (copy / "cli/pieces/tower.toml").read_text(encoding="utf-8")
    (copy / "cli/pieces/beacon.toml").write_text(tower, encoding="utf-8")
    changed(copy / "cli/starting/pieces.py", [('("tower", ', '("tower", "beacon", ')])
    like = ran(tmp_path, "-m", "yardfast", "new", "tower", "--defaults")
    done = ran(tmp_path, "-m", "yardfast", "new", "beacon", "--defaults")
    assert done.returncode == like.returncode == 0, done.stderr
    assert done.stdout.replace("beacon", "tower") == like.stdout


def test_a_sentence_of_a_listing_takes_its_forms_and_a_piece(tmp_path):
    copy = house(tmp_path)
    quay = 'QUAY = ("Made by the quay, of what the tide leaves.", "Made by the quay.")\n'
    changed(
        copy / "report/messages/listing_messages.py", [("LOCAL_RULES = ", f"{quay}LOCAL_RULES = ")]
    )
    rules = "        Piece((messages.LOCAL_RULES,)),\n"
    changed(
        copy / "report/printed/label_sentences.py",
        [(rules, f"{rules}        Piece(messages.QUAY),\n")],
    )
    (tmp_path / "crate.toml").write_text(DESIGN.format(ground="firm lawn", material="MDO"))
    done = ran(tmp_path, "-m", "yardfast", "label", "crate.toml")
    assert "Made by the quay" in done.stdout, done.stdout + done.stderr


CHECK = '''"""Whether two people can lift a piece."""

from ..design.structure import Structure
from .judged.judging import Check, Kind, check_demand

_TWO = 2.0 * 25.0 * 9.80665


def check_lifting(structure: Structure) -> Check:
    """Return whether two people, 25 kg each, can lift a piece."""
    return check_demand(Kind.LIFTING, structure.weight("heavy"), _TWO, "N", "judgement")
'''


def test_a_check_takes_a_kind_a_file_a_call_and_a_row(tmp_path):
    copy = house(tmp_path)
    (copy / "checks/lifting.py").write_text(CHECK, encoding="utf-8")
    changed(
        copy / "checks/judged/judging.py", [("    PUSH = ", '    LIFTING = "lifting"\n    PUSH = ')]
    )
    changed(
        copy / "checks/examination.py",
        [
            ("from .loose import", "from .lifting import check_lifting\nfrom .loose import"),
            (
                "    checks = [*whole.checks, *loose, *given]\n",
                "    checks = [*whole.checks, *loose, *given, check_lifting(at.structure)]\n",
            ),
        ],
    )
    changed(
        copy / "report/screens/checks_table.py",
        [
            (
                "        case Kind.PUSH:",
                '        case Kind.LIFTING:\n            return "lifting", "by two"\n'
                "        case Kind.PUSH:",
            )
        ],
    )
    lifting = [each for each in found(tmp_path)["checks"] if each["name"] == "lifting"]
    assert [each["capacity"] for each in lifting] == [pytest.approx(2 * 25 * 9.80665)]
    done = ran(tmp_path, "-m", "yardfast", "check", "crate.toml", "--numbers")
    assert any(line.split()[:3] == ["lifting", "by", "two"] for line in done.stdout.splitlines())


def test_a_step_takes_its_formula_twice_and_a_call(tmp_path):
    copy = house(tmp_path)
    typst = '  "pounds": v => $ m / 0.4536 = #m(v.m) / 0.4536 = #m(v.lb) $,\n  "weight": v'
    changed(copy / "report/templates/calculation.typ", [('  "weight": v', typst)])
    plain = '    "pounds": "m / 0.4536 = {m} / 0.4536 = {lb} lb",\n    "weight": "W'
    changed(copy / "report/messages/formulas.py", [('    "weight": "W', plain)])
    call = '        step("pounds", "In pounds", {"m": mass, "lb": mass / 0.45359237}),\n'
    weight = '        step("centre", "Height of the balance point"'
    changed(copy / "report/calculation/calculation_steps.py", [(weight, call + weight)])
    (tmp_path / "crate.toml").write_text(DESIGN.format(ground="firm lawn", material="MDO"))
    asked = ("--full", "--force", "-o", "crate.pdf")
    paper = ran(tmp_path, "-m", "yardfast", "sheet", "crate.toml", *asked)
    assert paper.returncode in (0, 1), paper.stderr
    pages = PdfReader(tmp_path / "crate.pdf").pages
    assert "In pounds" in "".join(page.extract_text() for page in pages)
    printed = "from yardfast.report.messages.formulas import FORMULAS as f; print(f['pounds'])"
    assert "lb" in ran(tmp_path, "-c", printed).stdout
