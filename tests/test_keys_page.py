"""The page of keys says what the reader accepts, and says something of every key."""

import keys_page


def test_every_key_says_what_it_means():
    assert keys_page.missing() == []


def test_nothing_is_said_of_keys_that_there_are_not():
    page = keys_page.page()
    for table, keys in keys_page.SAYS.items():
        for key in keys:
            assert f"`{key}`" in page.partition(f"[{table}]")[2].partition("## ")[0], (table, key)
    for key in keys_page.SHAPE_SAYS:
        assert f"| `{key}` |" in page, key


def test_the_page_is_the_one_that_the_reader_makes():
    """Where this fails, run  python tests/support/keys_page.py"""
    assert keys_page.PAGE.read_text(encoding="utf-8") == keys_page.page()


def test_a_key_stands_with_its_kind_and_whether_it_is_needed():
    page = keys_page.page()
    site = page.partition("## `[site]`")[2].partition("\n## ")[0]
    assert "| **`wind`** | the wind asked for, of the kind that `method` says | a speed" in site
    assert "| `slope` |" in site
    assert "`'houses and trees'`, `'open'`, `'shore'`" in site
    guy = page.partition("## `[[guy]]`")[2].partition("\n## ")[0]
    for key in ("name", "line", "anchor", "height", "radius", "count"):
        assert f"| **`{key}`** |" in guy
