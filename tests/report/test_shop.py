"""``shop.toml``: what a seller says once, read as strictly as a design."""

import pytest

from yardfast.design.faults import DesignError
from yardfast.report.printed.shop import Shop, read_shop, shop_file


def written(folder, text):
    file = folder / "shop.toml"
    file.write_text(text, encoding="utf-8")
    return file


def faults(folder, text):
    with pytest.raises(DesignError) as wrong:
        read_shop(written(folder, text))
    return wrong.value.faults


def test_keys_stand_alone_or_under_a_heading(tmp_path):
    keys = "maker = 'Works'\ncontact = '555 0100'\ncountry = 'US'\nwording = 'Made to order.'\n"
    for text in (keys, f"[shop]\n{keys}"):
        file = written(tmp_path, text)
        assert read_shop(file) == Shop("Works", "555 0100", "US", "Made to order.", str(file))


def test_an_empty_shop_says_nothing(tmp_path):
    assert read_shop(written(tmp_path, "# later\n")).maker is None


def test_all_faults_come_at_once_each_with_line_key_and_the_way_out(tmp_path):
    found = faults(
        tmp_path,
        "makr = 'Works'\ncontact = 5550100\nwording = 'Storm-proof, all.'\nemail = 'a@b.example'\n",
    )
    assert [(fault.line, fault.key) for fault in found] == [
        (1, "makr"),
        (2, "contact"),
        (3, "wording"),
        (4, "email"),
    ]
    assert "'maker'" in found[0].hint
    assert "quote marks" in found[1].expected
    assert "'storm-proof'" in found[2].expected
    assert "every storm" in found[2].expected
    assert "'contact'" in found[3].hint


@pytest.mark.parametrize(
    ("text", "line", "key"),
    [
        ("maker = Harbour Works\n", 1, "maker"),
        ("maker = 'A'\nmaker = 'B'\n", 2, "maker"),
        ("contact = '55\n", 1, "contact"),
        ("maker = 'A'\n[shop]\ncountry = 'US'\n", 1, "maker"),
        ("country = 'US'\n\nwording = ''\n", 3, "wording"),
        (f"wording = '{'x' * 201}'\n", 1, "wording"),
        ("[design]\nname = 'Light'\n", 1, None),
        ("[[shop]]\nmaker = 'A'\n", 1, None),
        ("shop = 'Works'\n", 1, "shop"),
    ],
)
def test_what_cannot_be_read_is_named_with_its_line(tmp_path, text, line, key):
    found = faults(tmp_path, text)
    assert (found[0].line, found[0].key) == (line, key)
    assert found[0].file.endswith("shop.toml")


@pytest.mark.parametrize("raw", [b"\xff\xfem\x00", b"maker = '\xe9'\n", b"maker = 'a'\n" * 100_000])
def test_bytes_that_are_no_text_are_faults(tmp_path, raw):
    file = tmp_path / "shop.toml"
    file.write_bytes(raw)
    with pytest.raises(DesignError):
        read_shop(file)


def test_the_nearest_shop_is_that_of_the_folder_else_of_one_above(tmp_path, monkeypatch):
    towers = tmp_path / "yard" / "towers"
    towers.mkdir(parents=True)
    written(tmp_path, "maker = 'Above'\n")
    monkeypatch.chdir(tmp_path / "yard")
    assert shop_file("towers/light.toml") is None
    written(tmp_path / "yard", "maker = 'Yard'\n")
    assert read_shop(shop_file("towers/light.toml")).maker == "Yard"
    assert read_shop(shop_file(str(towers / "light.toml"))).maker == "Yard"
    written(towers, "maker = 'Towers'\n")
    assert read_shop(shop_file("towers/light.toml")).maker == "Towers"
