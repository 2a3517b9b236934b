"""What TOML would report obscurely is said in a builder's words, with its line."""

import pytest
from sample_file import HARBOUR_LIGHT, altered, faults, the_fault

from yardfast.checks.inputs import read, read_text
from yardfast.design.faults import DesignError

HEIGHT_LINE = 1 + HARBOUR_LIGHT[: HARBOUR_LIGHT.index("height   =")].count("\n")


@pytest.mark.parametrize(
    ("value", "expected", "hint"),
    [
        ("36 in", "between quote marks", "'36 in'"),
        ("3 1/2 in   # a note", "between quote marks", "'3 1/2 in'"),
        ('36"', "between quote marks", "'36\"'"),
        ("5'-6\"", "between quote marks", "'5 ft 6 in'"),
        ("½ in", "between quote marks", "'½ in'"),
        ("1/2", "between quote marks", "'1/2 in'"),
        ("36 in'", "between quote marks", "'36 in'"),
        ("1,200 mm", "between quote marks", "'1200 mm' or '1.200 mm'"),
        ("“36 in”", "straight quote marks", "'36 in'"),
        ("‘36 in’", "straight quote marks", "'36 in'"),
        ("„36 in“", "straight quote marks", "'36 in'"),
        ("'36 in", "a closing '", "'36 in'"),
        ('"36 in', 'a closing "', "'36 in'"),
        ("\"36 in'", 'a closing "', "'36 in'"),
        ("'''36 in", "one quote mark", "'36 in'"),
        ('"3/4""', 'no " inside', "'3/4\"'"),
        ("'5'-6\"'", "no ' inside", "'5 ft 6 in'"),
        ("'36' in", "between the quote marks", "'36 in'"),
        ("'36 in',", "nothing behind", "'36 in'"),
        ("'36 in' wall = '1 in'", "one key on a line", "'wall'"),
        ("= '36 in'", "one '='", "'36 in'"),
        ("", "a value", ""),
        ("# none", "a value", ""),
        ("'36 in' 'or so'", "a length", ""),
        ('"36 \\in"', "no bare backslash", "single quote marks"),
        ("tall", "a length", "could not read 'tall'"),
        ("True", "a length", "'36 in'"),
        ("[1, 2", "a closing ]", ""),
        ("[1 in]", "a length", "'36 in'"),
        ("{ a = 1", "a closing }", ""),
        ("{ 1 }", "key = value", ""),
        ("['1 in' '2 in']", "commas between", ""),
        ("[[[[[[[[[[[[1]]]]]]]]]]]]", "a plain list", ""),
        ("'36 in\x07'", "no control characters", ""),
        ("'36 in\x00'", "no control characters", ""),
    ],
)
def test_a_value_that_toml_does_not_take(value: str, expected: str, hint: str) -> None:
    fault = the_fault(altered("'48 in'           # straight up", value))
    assert (fault.file, fault.line, fault.part) == ("piece.toml", HEIGHT_LINE, "tower")
    assert fault.key == "height"
    assert expected in fault.expected
    assert hint in fault.hint
    assert fault.found in f"height   = {value}" or fault.found == "nothing" or "\\x" in fault.found


@pytest.mark.parametrize(
    ("value", "expected", "hint"),
    [
        ("8,", "nothing behind", "8"),
        ("08", "a number", "8"),
        ("8.", "a number", "8"),
        (".5", "a whole number", "sides = 8"),
        ("1,200", "0 (round) or 3 to 60", ""),
        ("eight", "text between quote marks", "sides = 8"),
    ],
)
def test_a_number_that_toml_does_not_take(value: str, expected: str, hint: str) -> None:
    fault = the_fault(altered("sides    = 8", f"sides    = {value}"))
    assert (fault.part, fault.key, fault.found) == ("foot", "sides", value)
    assert expected in fault.expected
    assert fault.hint == hint


@pytest.mark.parametrize(
    ("line", "key", "expected", "hint"),
    [
        ("height: '48 in'", "height", "key = value", "height = '48 in'"),
        ("height '48 in'  # up", "height", "key = value", "height = '48 in'"),
        ("height 48 in", "height", "key = value", "height = '48 in'"),
        ("height", "height", "key = value", "height = "),
        ("height := '48 in'", "height", "a key of letters", "height = '48 in'"),
        ("“height” = '48 in'", "height", "a key of letters", "height = '48 in'"),
        ("height = '48 in'\nheight = '40 in'", "height", "once in a table", "on line 26"),
    ],
)
def test_a_line_that_is_no_key_and_value(line: str, key: str, expected: str, hint: str) -> None:
    fault = the_fault(altered("height   = '48 in'           # straight up", line))
    assert fault.line == HEIGHT_LINE + line.count("\n")
    assert (fault.part, fault.key) == ("tower", key)
    assert expected in fault.expected
    assert hint in fault.hint


def test_a_key_of_two_words_is_joined() -> None:
    found = faults(altered("height   =", "panel length ="))
    fault = next(each for each in found if each.line == HEIGHT_LINE)
    assert fault.hint == "panel_length = '48 in'"


@pytest.mark.parametrize(
    ("old", "new", "expected", "hint"),
    [
        ("[[part]]", "[part]", "[[part]]", "double brackets"),
        ("[[part]]", "[[part]", "[[part]]", "in pairs"),
        ("[[part]]", "[part]]", "[[part]]", "in pairs"),
        ("[[part]]", "[[part]] foot", "[[part]]", "the name alone"),
        ("[[part]]", '[["part"]]', "[[part]]", "the name alone"),
        ("[[part]]", "part", "[[part]]", "in pairs"),
        ("[[part]]", "[[parts]]", "[[part]]", "'part'?"),
        ("[site]", "[[site]]", "[site]", "single brackets"),
        ("[site]", "[Site]", "[site]", "'site'?"),
        ("[site]", "[sight]", "[site]", "'site'?"),
        ("[design]", "[desing]", "[design]", "'design'?"),
    ],
)
def test_a_heading_that_is_nearly_right(old: str, new: str, expected: str, hint: str) -> None:
    fault = the_fault(altered(old, new))
    assert fault.line == 1 + HARBOUR_LIGHT[: HARBOUR_LIGHT.index(old)].count("\n")
    assert fault.found == new
    assert fault.expected == expected
    assert hint in fault.hint


def test_an_unknown_table_names_the_known_ones() -> None:
    fault = the_fault(f"{HARBOUR_LIGHT}[colours]\nroof = 'red'\n")
    assert (
        fault.expected
        == "one of [design], [[part]], [site], [[load]], [[anchor]], [[ballast]], [[guy]], "
        "[[joint]], [[seam]], [[record]], [[odds]]"
    )
    assert fault.line == HARBOUR_LIGHT.count("\n") + 1


def test_a_second_site_points_at_the_first() -> None:
    fault = the_fault(f"{HARBOUR_LIGHT}[site]\nwind = '60 mph'\n")
    assert "one table [site]" in fault.expected
    assert "line 5" in fault.hint


@pytest.mark.parametrize(
    "table",
    [
        "[paint]\ncolour = 'red'\ncoats = 2",
        "[paint]\nname = 'red'\ncoats = 2",
        "[pant]",
        "[light]\na = 1",
    ],
)
def test_a_table_that_only_sounds_like_another_is_reported_alone(table: str) -> None:
    fault = the_fault(f"{HARBOUR_LIGHT}\n{table}\n")
    assert fault.found == table.split("\n", maxsplit=1)[0]
    assert fault.expected.startswith("one of [design], [[part]], [site]")
    assert (fault.part, fault.key) == (None, None)


def test_names_that_stand_twice_are_told_with_the_right_article() -> None:
    anchor = "[[anchor]]\nname = 'stakes'\nkind = 'rebar stake 1/2 in x 36 in'\nwhere = 'corners'\n"
    fault = the_fault(f"{HARBOUR_LIGHT}\n{anchor}{anchor}")
    line = HARBOUR_LIGHT.count("\n") + 3
    assert fault.expected == f"a name of its own: an anchor on line {line} has it already"


def test_a_misspelt_heading_over_keys_of_its_table_is_read_as_that_table() -> None:
    text = altered("[[part]]\nname     = 'tower'", "[[prat]]\nname     = 'tower'")
    text = altered("'48 in'", "'48 lb'", text)
    heading, height = faults(text)
    assert (heading.found, heading.expected, heading.part) == ("[[prat]]", "[[part]]", "tower")
    assert (height.part, height.key) == ("tower", "height")


def test_a_key_above_every_heading_is_told_where_it_belongs() -> None:
    fault = the_fault(f"maker = 'B. Rowe'\n{HARBOUR_LIGHT}")
    assert (fault.line, fault.key, fault.found) == (1, "maker", "maker")
    assert "[design]" in fault.expected


@pytest.mark.parametrize(
    ("text", "missing"),
    [("", ["no [design]", "no [site]"]), ("# nothing\n", ["no [design]", "no [site]"])],
)
def test_an_empty_file_lacks_its_tables(text: str, missing: list[str]) -> None:
    assert [fault.found for fault in faults(text)] == missing


def test_a_file_without_parts_says_so() -> None:
    fault = the_fault(HARBOUR_LIGHT[: HARBOUR_LIGHT.index("[[part]]")])
    assert fault.found == "no [[part]]"


def test_what_was_found_is_cut_at_sixty_characters() -> None:
    long = "x" * 500
    for text in (altered("'48 in'", f"'{long}'"), altered("'48 in'", long), f"{long}\n"):
        for fault in faults(text):
            assert len(fault.found) <= 60
            assert len(fault.key or "") <= 60


def test_a_backslash_that_is_doubled_is_one() -> None:
    text = altered("'Harbour light'", '"Harbour \\\\u light \\\\"')
    assert read_text(text).name == "Harbour \\u light \\"
    wrong = altered("'Harbour light'", '"Harbour \\\\\\light"')
    assert "bare backslash" in the_fault(wrong).expected


@pytest.mark.parametrize("name", ["\\u202e", "tower\\u202e", "\\u001b[31m"])
def test_a_name_that_cannot_be_printed_is_escaped_where_names_are_listed(name: str) -> None:
    """A joint that names no part lists them; one that turns the line about stands there escaped."""
    bare = f'[[part]]\nname = "{name}"\nshape = "box"\nlumber = "4x4"\nheight = "30 in"\n'
    wood = "material = 'redwood'\n"
    joint = "[[joint]]\nname = 'j'\nof = 'towr'\nto = 'foot'\nfastener = '8d common nail'\n"
    told = faults(f"{HARBOUR_LIGHT}\n{bare}{wood}\n{joint}")
    listed = [one for one in told if one.expected.startswith("the name of a part")]
    assert listed
    for fault in told:
        assert (fault.found + fault.expected + fault.hint + (fault.part or "")).isprintable()


def test_control_characters_are_escaped() -> None:
    text = altered("'48 in'", '"48\\u001b[31m in\\u0000"')
    fault = the_fault(text)
    assert fault.found == "48\\x1b[31m in\\x00"
    assert all((fault.found + fault.expected + fault.hint).isprintable() for fault in faults(text))


def read_faults(path) -> str:
    with pytest.raises(DesignError) as caught:
        read(path)
    (fault,) = caught.value.faults
    assert fault.file == str(path)
    return f"{fault.line}: {fault.found}; {fault.expected}; {fault.hint}"


def test_a_missing_file_names_its_neighbour(tmp_path) -> None:
    (tmp_path / "light.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    assert "no such file" in read_faults(tmp_path / "ligth.toml")
    assert "'light.toml'?" in read_faults(tmp_path / "ligth.toml")
    assert "no such file" in read_faults(tmp_path / "nowhere" / "ligth.toml")


def test_a_folder_is_no_file(tmp_path) -> None:
    assert "a folder" in read_faults(tmp_path)


def test_a_name_that_no_file_can_have_is_a_fault() -> None:
    assert "a file that can be read" in read_faults("light\0.toml")


def test_a_file_above_one_megabyte_is_refused(tmp_path) -> None:
    file = tmp_path / "big.toml"
    file.write_text(HARBOUR_LIGHT + "#" * 1_000_000, encoding="utf-8")
    assert "1 MB" in read_faults(file)


@pytest.mark.parametrize(
    ("raw", "found"),
    [
        (HARBOUR_LIGHT.replace("'9 in'", "'9 in½'").encode("latin-1"), "25: top"),
        (HARBOUR_LIGHT.encode("utf-16"), "UTF-16"),
        (b"\xff\xff\xff", "1: "),
        (b"a = '\x80'\r", "1: a = "),
    ],
)
def test_bytes_that_are_not_utf8_are_named_by_line(tmp_path, raw: bytes, found: str) -> None:
    file = tmp_path / "light.toml"
    file.write_bytes(raw)
    told = read_faults(file)
    assert found in told
    assert "UTF-8" in told


def test_two_sites_in_one_list_are_not_one_of_them() -> None:
    start, end = HARBOUR_LIGHT.index("[site]"), HARBOUR_LIGHT.index("[[part]]")
    sites = "site = [{ method = 'gust' }, { method = 'forecast' }]\n"
    fault = the_fault(sites + HARBOUR_LIGHT[:start] + HARBOUR_LIGHT[end:])
    assert (fault.line, fault.key) == (1, "site")
    assert "[site]" in fault.expected
