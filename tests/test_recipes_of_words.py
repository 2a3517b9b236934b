"""Recipes of DEVELOPERS.md for what is told, each followed to the letter in a copy of the house."""

from shutil import copytree

import pytest
from recipes import DESIGN, ROOT, changed, found, house, ran

pytestmark = pytest.mark.slow  # each copies the house and starts a Python or two of its own

FALL = '''

def fall_speed(height: str | units.Quantity) -> units.Quantity:
    """Return how fast what falls from a height lands, as a quantity: v = sqrt(2 g h).

    >>> print(f"{yf.fall_speed('5 m').to('m/s'):.2f}")
    9.90 meter / second
    """
    speed = np.sqrt(2.0 * 9.80665 * si("height", height, "length"))
    return units.quantity(as_given(speed), "speed")
'''


def with_support(folder):
    """Return a copy of the house with what its tests are made of."""
    copy = house(folder)
    copytree(ROOT / "tests/support", copy / "tests/support")
    return copy


def test_a_public_name_takes_an_example_a_place_and_a_line_of_the_page(tmp_path):
    """v = sqrt(2 g h), any textbook of mechanics: 9.9028 m/s from 5 m."""
    copy = with_support(tmp_path)
    public = copy / "loads/public.py"
    public.write_text(public.read_text(encoding="utf-8") + FALL, encoding="utf-8")
    changed(
        copy / "__init__.py",
        [
            ('    "lateral",\n', '    "fall_speed",\n    "lateral",\n'),
            (
                '    "lateral": "checks',
                '    "fall_speed": "loads.public",\n    "lateral": "checks',
            ),
            ("public import velocity_pressure", "public import fall_speed, velocity_pressure"),
        ],
    )
    page = copy / "tests/support/interface_page.py"
    changed(page, [('    "lateral",\n', '    "fall_speed",\n    "lateral",\n')])
    done = ran(tmp_path, str(page))
    assert done.returncode == 0, done.stderr
    written = (copy / "examples/PYTHON.md").read_text(encoding="utf-8")
    assert "### `yf.fall_speed(height)`\n\nReturn how fast what falls" in written
    for name in ("test_interface_page.py", "conftest.py"):
        (copy / "tests" / name).write_bytes((ROOT / "tests" / name).read_bytes())
    asked = ("-n", "0", "-q", "--rootdir", str(copy), "-c", str(copy / "pyproject.toml"))
    only = ("-k", "loads.public or page or public_name", str(copy / "tests"))
    tested = ran(tmp_path, "-m", "pytest", *asked, *only)
    assert tested.returncode == 0, tested.stdout + tested.stderr


@pytest.mark.parametrize(("printed", "status"), [("60.0", 0), ("61.0", 1)])
def test_a_published_answer_takes_a_row(tmp_path, printed, status):
    """A level push slides a block at mu W: 0.3 of 200 lb is 60.0, which a book may misprint."""
    copy = with_support(tmp_path)
    table = copy / "references/verified/ground.csv"
    row = (
        "inclined push that slides a block,push that slides it,weight_lb=200; mu=0.3; "
        f"degrees_down=0,{printed},lbf,,A book of the quay,page 1,judgement,\n"
    )
    table.write_text(table.read_text(encoding="utf-8") + row, encoding="utf-8")
    done = ran(tmp_path, "-m", "yardfast", "verify")
    assert done.returncode == status, done.stderr
    assert "A book of the quay" in done.stdout
    page = ran(tmp_path, str(copy / "tests/support/verification_page.py"))
    assert page.returncode == 0, page.stderr
    written = (copy / "references/verification.md").read_text(encoding="utf-8")
    assert "## A book of the quay\n\n| what" in written
    assert f"| page 1 | judgement | {printed} lbf | 60.000 |" in written


def test_a_word_of_the_verdict_takes_its_place_what_gives_it_a_message_and_a_design(tmp_path):
    copy = with_support(tmp_path)
    gives = (
        '    if found.structure.mass("typical") < 25.0:\n'
        "        return Word.CARRY_IT, Reason.NOTHING_FAILS, ()\n"
    )
    changed(
        copy / "checks/verdict.py",
        [
            ('    HELD_DOWN = "', '    CARRY_IT = "carry it in"\n    HELD_DOWN = "'),
            ("    stands = Word.STANDS_BY", f"{gives}    stands = Word.STANDS_BY"),
        ],
    )
    stands = "    (Word.STANDS, Reason.NOTHING_FAILS):"
    many = "    Word.STANDS: "
    changed(
        copy / "report/messages/messages.py",
        [
            (
                stands,
                f'    (Word.CARRY_IT, Reason.NOTHING_FAILS): " when it blows, one hand will do"'
                f",\n{stands}",
            ),
            (many, f'    Word.CARRY_IT: "to carry in",\n{many}'),
        ],
    )
    text = (
        DESIGN.format(ground="firm lawn", material="softwood plywood")
        .replace("58 mph", "12 mph")
        .replace("30 in", "6 in")
    )
    reached = f"TEXTS[Word.CARRY_IT, Reason.NOTHING_FAILS] = {text!r}\n"
    designs = copy / "tests/support/word_designs.py"
    designs.write_text(designs.read_text(encoding="utf-8") + reached, encoding="utf-8")
    assert found(tmp_path, text)["verdict"]["word"] == "carry it in"
    told = ran(tmp_path, "-m", "yardfast", "check", "crate.toml").stdout
    assert "CARRY IT IN when it blows, one hand will do" in " ".join(told.split()), told
    asks = (
        "import sys; sys.path.insert(0, 'yardfast/tests/support'); from word_designs import TEXTS\n"
        "from yardfast.checks.inputs import read_text\n"
        "from yardfast.checks.examination import examine\n"
        "from yardfast.checks.verdict import Word\n"
        "print(*[w for (w, _), t in TEXTS.items() if w is Word.CARRY_IT\n"
        "and examine(read_text(t)).verdict.word is w])"
    )
    assert ran(tmp_path, "-c", asks).stdout.strip() == "carry it in"


@pytest.mark.parametrize(("ground", "applies"), [("sand", True), ("firm lawn", False)])
def test_a_caution_takes_a_row_and_when_it_applies(tmp_path, ground, applies):
    copy = house(tmp_path)
    table = copy / "references/cautions.csv"
    row = 'at the quay,"The tide comes up to {height}.",common practice,judgement\n'
    table.write_text(table.read_text(encoding="utf-8") + row, encoding="utf-8")
    when = '    "at the quay": lambda e: e.site.ground == "sand",\n'
    changed(copy / "checks/stated/cautions.py", [('    "wet": ', f'{when}    "wet": ')])
    said = found(tmp_path, ground=ground)["cautions"]
    assert ("The tide comes up to 2 ft 6 in." in said) is applies, said


def test_a_caution_may_name_what_it_is_of(tmp_path):
    copy = house(tmp_path)
    table = copy / "references/cautions.csv"
    row = "hollow,Rain stands in {of}.,common practice,judgement\n"
    table.write_text(table.read_text(encoding="utf-8") + row, encoding="utf-8")
    of = '    "hollow": lambda e: (p.name for p in e.design.parts if p.shape.is_hollow),\n'
    changed(copy / "checks/stated/cautions.py", [('    "glue": ', f'{of}    "glue": ')])
    assert "Rain stands in 'crate'." in found(tmp_path)["cautions"]
