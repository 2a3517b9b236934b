"""Nothing is handed to a buyer that fails: what is refused, drafts, what is laid down."""

import re

import pytest
import word_designs
from pages import words

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.verdict import Reason, Word
from yardfast.cli import main
from yardfast.report.printed.gate import not_ready
from yardfast.report.printed.sheet import sheet

SOLD = {
    Word.TIE_IT_DOWN,
    Word.WEIGH_IT_DOWN,
    Word.HELD_DOWN,
    Word.STANDS,
    Word.STANDS_BY_POSTS,
}
EACH = pytest.mark.parametrize(("word", "why"), word_designs.TEXTS, ids=str)


def laid(text):
    return text.replace("units = 'imperial'", "units = 'imperial'\nlaid_down = true", 1)


@EACH
def test_sheet_and_label_refuse_what_fails_and_say_what_to_mend(
    tmp_path, monkeypatch, capsys, word, why
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "piece.toml").write_text(word_designs.TEXTS[word, why], encoding="utf-8")
    status = main(["sheet", "piece.toml", "-o", "piece.pdf"])
    err = " ".join(capsys.readouterr().err.split())
    assert status == (0 if word in SOLD else 1)
    assert (tmp_path / "piece.pdf").exists() == (word in SOLD)
    if word in SOLD:
        return
    assert f"not ready for a buyer. {word.capitalize()}" in err
    assert "Mend first: " in err
    assert "--draft" in err
    assert main(["label", "piece.toml"]) == 1
    assert "no text for a listing" in capsys.readouterr().err
    assert main(["sheet", "piece.toml", "-o", "piece.pdf", "--draft"]) == 0


@pytest.mark.slow
@EACH
def test_a_draft_says_so_across_the_page_and_no_other_page_does(word, why):
    text = words(sheet(examine(read_text(word_designs.TEXTS[word, why])), "letter"))
    assert ("NOT READY TO SELL" in text) == (word not in SOLD)
    assert ("DRAFT" in text) == (word not in SOLD)


@EACH
def test_no_page_contradicts_itself(word, why):
    found = examine(read_text(word_designs.TEXTS[word, why]))
    text = words(sheet(found, "letter"))
    drawn = "as drawn" in text
    assert drawn == ("black dots" in text or "Dig as drawn" in text or "guys of" in text)
    assert ("WEIGH IT DOWN" in text) == (word is Word.WEIGH_IT_DOWN)
    assert ("Not before it is mended" in text) == (word not in SOLD)
    if word not in SOLD:
        assert "TIE IT DOWN" not in text
        assert "worked out for a forecast gust" not in text
        assert "You need" not in text


@pytest.mark.slow
def test_what_is_meant_to_be_laid_down_is_told_that_alone():
    for key, text in word_designs.TEXTS.items():
        found = examine(read_text(laid(text)))
        if key[0] in (Word.FALLS_OVER, Word.COMES_APART) or not found.verdict.untied.act:
            assert not_ready(found) or found.verdict.may_be_sold
            continue
        assert not_ready(found) is None
        page = words(sheet(found, "letter"))
        if found.posts is None and not found.held:
            assert re.search(r"When gusts are forecast over .* → LAY IT DOWN or take it in", page)
            assert "TIE IT DOWN" not in page
            assert "drive" not in page
            assert "stake" not in page.split("Not looked at")[0]


def test_a_draft_of_a_listing_says_so_before_all_else(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    text = word_designs.TEXTS[Word.COMES_APART, Reason.PART_FAILS]
    (tmp_path / "piece.toml").write_text(text, encoding="utf-8")
    assert main(["label", "piece.toml", "--draft"]) == 0
    texts = capsys.readouterr().out.splitlines()
    assert sum(line.startswith("DRAFT, NOT READY TO SELL. ") for line in texts) == 2
