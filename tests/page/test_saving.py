"""Saving: the file whole, its comments and the old one kept, and nothing of another's lost."""

import shutil

import pytest
from page_server import BLOCK, page


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "block.toml").write_text(BLOCK, encoding="utf-8")
    return tmp_path


def _moved(running, text, field, value):
    status, answer = running.post("look", {"text": text, "edits": [[field, [value]]]})
    assert status == 200
    return answer["text"]


def test_a_saved_file_keeps_its_comments_and_the_old_one_beside_it(folder):
    file = folder / "block.toml"
    old = file.read_text(encoding="utf-8")
    with page("block.toml", folder=folder) as running:
        opened = running.post("file", {})[1]
        text = _moved(running, opened["text"], "site.0.wind", "44 mph")
        status, saved = running.post("save", {"text": text, "mark": opened["mark"]})
        assert status == 200
        again = _moved(running, text, "site.0.wind", "45 mph")
        assert running.post("save", {"text": again, "mark": saved["mark"]})[0] == 200
    new = file.read_text(encoding="utf-8")
    differs = [(a, b) for a, b in zip(old.splitlines(), new.splitlines(), strict=True) if a != b]
    assert len(differs) == 1
    assert "'45 mph'" in differs[0][1]
    assert differs[0][0].partition("#")[2] == differs[0][1].partition("#")[2]
    assert (folder / "block.toml.old").read_text(encoding="utf-8") == old
    assert {each.name for each in folder.iterdir()} == {"block.toml", "block.toml.old"}


def test_line_ends_and_the_mark_before_a_text_stay(folder):
    file = folder / "block.toml"
    text = file.read_text(encoding="utf-8")
    file.write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    with page("block.toml", folder=folder) as running:
        opened = running.post("file", {})[1]
        new = _moved(running, opened["text"], "site.0.wind", "44 mph")
        assert running.post("save", {"text": new, "mark": opened["mark"]})[0] == 200
    assert file.read_bytes() == b"\xef\xbb\xbf" + new.replace("\n", "\r\n").encode()


def test_of_two_windows_the_second_does_not_write_over_the_first(folder):
    file = folder / "block.toml"
    with page("block.toml", folder=folder) as running:
        opened = running.post("file", {})[1]
        first = _moved(running, opened["text"], "site.0.wind", "44 mph")
        second = _moved(running, opened["text"], "site.0.wind", "46 mph")
        assert running.post("save", {"text": first, "mark": opened["mark"]})[0] == 200
        status, answer = running.post("save", {"text": second, "mark": opened["mark"]})
        assert (status, answer["changed"]) == (409, True)
        assert file.read_text(encoding="utf-8") == first
        sent = {"text": second, "mark": opened["mark"], "beside": True}
        status, answer = running.post("save", sent)
        assert (status, answer["file"]) == (200, "block-2.toml")
    assert (folder / "block-2.toml").read_text(encoding="utf-8") == second
    assert file.read_text(encoding="utf-8") == first


def test_a_file_that_another_program_changed_is_not_written_over(folder):
    file = folder / "block.toml"
    with page("block.toml", folder=folder) as running:
        opened = running.post("file", {})[1]
        for theirs in (opened["text"] + "# theirs\n", None):
            file.unlink() if theirs is None else file.write_text(theirs, encoding="utf-8")
            sent = {"text": opened["text"] + "# mine\n", "mark": opened["mark"]}
            assert running.post("save", sent)[0] == 409
            assert (file.read_text(encoding="utf-8") if file.exists() else None) == theirs


def test_without_a_file_it_begins_with_a_kind_and_saves_under_a_free_name(tmp_path):
    (tmp_path / "garden-well.toml").write_text("mine", encoding="utf-8")
    with page(folder=tmp_path) as running:
        _, _, body = running.get()
        assert body.count(b"<svg xmlns=") >= 3
        assert list(tmp_path.glob("*.toml")) == [tmp_path / "garden-well.toml"]
        status, answer = running.post("look", {"text": "", "kind": "well", "metric": True})
        assert status == 200
        assert "'metric'" in answer["text"]
        status, saved = running.post("save", {"text": answer["text"], "called": "../../well"})
        assert (status, saved["file"]) == (200, "garden-well-2.toml")
    assert (tmp_path / "garden-well.toml").read_text(encoding="utf-8") == "mine"
    assert (tmp_path / "garden-well-2.toml").read_text(encoding="utf-8") == answer["text"]


def test_a_folder_that_is_closed_is_told(folder):
    with page("block.toml", folder=folder) as running:
        opened = running.post("file", {})[1]
        shutil.rmtree(folder)
        status, answer = running.post("save", {"text": "x", "mark": opened["mark"]})
        assert status == 409
        assert answer.get("why") or answer.get("changed")
