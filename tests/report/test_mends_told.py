"""What is told to mend: how much, the worst first, and lines that mend it once they are typed."""

import re
from pathlib import Path

import pytest
from joint_designs import POST, TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.judged.judging import Kind
from yardfast.checks.sizing.mending import mending
from yardfast.cli import main
from yardfast.cli.commands.new import default_file, file_of
from yardfast.report.advice.mend_lines import lines_to_type, mend_lines, mend_objects
from yardfast.report.advice.mends import mends
from yardfast.report.advice.verdict_words import why
from yardfast.report.told.facts import facts_of

BLOCK = """
[design]
name = 'bench'
units = 'metric'
[site]
method = 'gust'
wind = '5 m/s'
ground = 'paving'
[[part]]
name = 'block'
shape = 'box'
length = '1 m'
width = '0.4 m'
height = '0.5 m'
mass = '60 kg'
[[load]]
name = 'leaning'
force = '250 N'
at = ['0 m', '0 m', '0.5 m']
direction = 'back'
"""
WEIGHT = """
[[part]]
name = 'bags'
shape = 'weight'
mass = '{mass} kg'
on = 'block'
at = ['0 m', '0 m', '-0.4 m']
"""


def found_of(text):
    return examine(read_text(text, "piece.toml"))


def told(text):
    """Return what would mend a piece, and the slots of its messages."""
    found = found_of(text)
    return mending(found), facts_of(found)


def in_file(text, lines):
    """Return a file with lines typed in place of those keys of the table that they name."""
    heads = [n for n, line in enumerate(lines) if line.startswith("[[")]
    for start, end in zip(heads, [*heads[1:], len(lines)], strict=True):
        heading, name, *entries = lines[start:end]
        tables = text.split("[[")
        (at,) = [
            k
            for k, table in enumerate(tables)
            if table.startswith(heading[2:]) and re.search(rf"^{re.escape(name)}$", table, re.M)
        ]
        for entry in entries:
            key = entry.split(" = ")[0].replace("# and take out", "").strip()
            tables[at] = re.sub(rf"^{key}\s*=.*\n", "", tables[at], flags=re.M)
            if not entry.startswith("#"):
                tables[at] += f"\n{entry}\n"
        text = "[[".join(tables)
    return text


@pytest.mark.slow
@pytest.mark.parametrize(
    "text",
    [
        POST + joint("block", "plank", "8d common nail", 2),
        TOWER + joint(),
        TOWER + joint(fastener="6d common nail", count=2),
    ],
)
def test_lines_to_type_make_the_joint_hold(text):
    found = found_of(text)
    (joint_,) = (check for check in found.verdict.mend if check.kind is Kind.JOINT)
    every = mends(mending(found), facts_of(found))
    lines = [line for mend in every for one in mend.lines for line in lines_to_type(one)]
    assert lines
    again = found_of(in_file(text, [re.sub(r" +=", " =", line) for line in lines]))
    assert next(check for check in again.checks if check.name == joint_.name).passes


OBELISK = default_file("obelisk").replace("'58 mph'", "'110 mph'")
WHEEL = re.sub(r"thickness = '3/16 in'", "thickness = '1/16 in'", default_file("wheel"))
BRIDGE = file_of("footbridge", {"rails": "30 in"})
BRIDGE = re.sub(r"\[\[anchor\]\].*?(?=\[\[load\]\])", "", BRIDGE, flags=re.S)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("text", "name", "key"),
    [
        (OBELISK, "member: legs", "lumber"),
        (WHEEL, "member: wheel", "thickness"),
        (BRIDGE, "load: leaning", "where"),
    ],
    ids=["larger lumber", "thicker blades", "anchors"],
)
def test_lines_to_type_make_a_part_or_a_load_pass(text, name, key):
    """Typed into the file they are examined as any: what they are for passes, nothing else fails"""
    text = re.sub(r" +=", " =", text)
    found = found_of(text)
    alike = [one.name for one in found.verdict.mend]
    assert name in alike
    every = mends(mending(found), facts_of(found))
    lines = [each for mend in every for one in mend.lines for each in lines_to_type(one)]
    assert any(line.startswith(key) for line in lines)
    if name.startswith("load"):
        typed = text + "\n" + "\n".join(lines) + "\n"
    else:
        typed = in_file(text, [re.sub(r" +=", " =", line) for line in lines])
    again = found_of(typed)
    assert next(check for check in again.checks if check.name == name).passes
    passed = {check.name for check in found.checks if check.passes}
    assert not [c.name for c in again.checks if c.name in passed and not c.passes]


@pytest.mark.slow
def test_of_every_mend_it_is_told_what_to_do_in_its_line_too():
    """Where there is most to mend the lines are shortest; none of them stops at what is wrong."""
    to_do = (
        r"cleats|blocks|.*, (\d+ of them|one)\b|fasten|thick|braces|drill|fewer|set|four|a wider"
    )
    to_do += "|shorter|.* would do"
    for file in ("swing", "three-pieces", "boathouse"):
        found = examine(read(f"examples/{file}.toml"))
        for mend in mends(mending(found, 3), facts_of(found)):
            assert re.match(rf"([a-z ]+: )?({to_do})", mend.short), mend.short


@pytest.mark.slow
def test_lines_stand_behind_numbers_in_mend_and_in_the_json(tmp_path, capsys, monkeypatch):
    monkeypatch.chdir(tmp_path)
    file = Path("piece.toml")
    file.write_text(TOWER + joint(), encoding="utf-8")
    said = [line.text for line in mend_lines(*told(TOWER + joint()), 79)]
    assert any("blocks" in line and "'spruce-pine-fir'" in line for line in said)
    for command in (["check", str(file), "--numbers"], ["mend", str(file)]):
        main(command)
        out = capsys.readouterr().out.splitlines()
        assert set(said) <= set(out)
        assert all(len(line) <= 79 for line in out)
    assert file.read_text(encoding="utf-8") == TOWER + joint()
    one = next(each for each in mend_objects(*told(TOWER + joint())) if each["lines"])
    assert one["of"] == ["joint: tower to foot"]
    assert one["lines"][0]["keys"]["blocks"] == "'spruce-pine-fir'"


def test_a_load_that_is_not_stood_comes_with_how_much_lets_it_stand():
    """Dry concrete on paving: 250 N against friction alone; a step less weight does not do."""
    found = found_of(BLOCK)
    (mend,) = mends(mending(found), facts_of(found))
    mass = float(re.search(r"(\d+) kg low in the foot", mend.whole)[1])
    passes = [
        next(check for check in found_of(BLOCK + WEIGHT.format(mass=kg)).checks if check.load)
        for kg in (mass, mass - 2.0)
    ]
    assert [check.passes for check in passes] == [True, False]


def test_a_frame_that_racks_is_mended_first():
    """Whatever else is asked more of what it holds: nothing of a mechanism can be judged."""
    from yardfast.checks.inputs import read

    verdict = examine(read("examples/footbridge.toml")).verdict
    assert verdict.mend[0].kind is Kind.RACKING
    ranks = [check.rank for check in verdict.mend[1:]]
    assert ranks == sorted(ranks, reverse=True)
    assert any(rank > verdict.mend[0].rank for rank in ranks) or verdict.mend[0].rank > 1.0


SIGN = """
[design]
name = 'Welcome sign'
units = 'imperial'
[site]
method = 'forecast'
wind = '50 mph'
exposure = 'houses and trees'
ground = 'firm lawn'
[[part]]
name = 'posts'
shape = 'solid'
lumber = '4x4'
height = '6 ft 6 in'
embed = '30 in'
count = 2
step = ['40 in', '0 in', '0 in']
material = 'southern pine, treated'
[[part]]
name = 'board'
shape = 'panel'
width = '44 in'
height = '20 in'
stock = '3/4 plywood'
at = ['20 in', '-2 1/8 in', '26 in']
material = 'softwood plywood'
[[joint]]
name = 'board to posts'
of = 'board'
to = 'posts'
fastener = '1/4 bolt 5 in'
washer = '1 in'
count = 2
"""


def test_a_frame_that_racks_names_the_joints_that_hold_no_pull():
    """No bearing value of washers on plywood is held here, so its bolts hold no pull at all."""
    found = found_of(SIGN)
    racking = next(check for check in found.verdict.mend if check.kind is Kind.RACKING)
    assert found.joints[0].holds.pull == 0.0
    assert "board" in racking.slots
    (first, *_) = mends(mending(found), facts_of(found))
    assert "since board to posts holds no pull: screws there that do" in first.whole
    # screws as they say: what racked for want of a pull no longer does
    screwed = found_of(SIGN.replace("'1/4 bolt 5 in'\nwasher = '1 in'", "'#14 wood screw 3 in'"))
    assert screwed.joints[0].holds.pull > 0.0
    assert not any(check.kind is Kind.RACKING for check in screwed.verdict.mend)


def test_of_a_piece_on_posts_deeper_posts_alone_are_not_enough():
    found = found_of(SIGN)
    assert "deeper posts alone will not save it" in why(found.verdict, facts_of(found))
