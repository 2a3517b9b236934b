"""The server: its first answer, who may ask it, and that it ends at once."""

import re
import time
from pathlib import Path

import pytest
from page_server import BLOCK, page

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("yard")
    (folder / "block.toml").write_text(BLOCK, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def running(folder):
    with page("block.toml", folder=folder) as found:
        yield found


def test_its_address_answers_with_the_page_and_its_first_drawing(running):
    assert re.fullmatch(r"http://127\.0\.0\.1:\d+/[\w-]{32}/", running.address)
    status, headers, body = running.get()
    assert status == 200
    assert headers["content-type"].startswith("text/html")
    assert body.count(b"<svg xmlns=") >= 3
    assert "default-src 'none'" in headers["content-security-policy"]


def test_nothing_of_the_page_comes_from_another_host(running):
    _, _, body = running.get()
    for name in (b"", *re.findall(rb'(?:href|src)="(static/[^"]+)"', body)):
        status, _, found = running.get(name.decode())
        assert status == 200
        others = re.findall(rb"https?://[\w./-]+", found)
        assert set(others) <= {b"http://www.w3.org/2000/svg"}
        assert b"style=" not in found


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1.evil.example", "localhost:1", ""])
def test_another_name_for_this_machine_is_refused(running, host):
    """As where a name of somebody else's is made to lead here."""
    status, _, body = running.ask("GET", f"/{running.token}/", headers={"Host": host})
    assert status == 421
    assert b"svg" not in body


def test_a_request_for_no_path_at_all_is_refused(running):
    """RFC 9112 3.2.4: the asterisk form, of OPTIONS alone."""
    status, _, body = running.ask("OPTIONS", "*")
    assert (status, len(body) < 100) == (403, True)


@pytest.mark.parametrize("path", ["/", "/x/", "/../", "//", "/{}x/", "/{}/../../etc/passwd"])
def test_without_the_token_nothing_is_told(running, path):
    status, _, body = running.ask("GET", path.format(running.token))
    assert status in (403, 404)
    assert len(body) < 100


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Origin": "http://evil.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Content-Type": "text/plain"}, 415),
        ({"Content-Type": "application/x-www-form-urlencoded"}, 415),
        ({"Content-Length": "99999999"}, 413),
    ],
)
def test_what_another_page_could_send_is_refused(running, headers, status):
    assert running.post("save", {"text": "", "mark": ""}, **headers)[0] == status


@pytest.mark.parametrize(
    ("what", "sent"),
    [
        ("look", []),
        ("look", {"text": 3}),
        ("look", {"text": "\ud800"}),
        ("look", {"text": "", "edits": [["part.0", ["1"]]]}),
        ("look", {"text": "", "edits": [["part.0.across", []]]}),
        ("look", {"text": "", "edits": {"a": 1}}),
        ("look", {"text": "", "kind": "castle"}),
    ],
)
def test_what_the_page_never_sends_is_answered_in_a_sentence(running, what, sent):
    status, answer = running.post(what, sent)
    assert status == 400
    assert "Traceback" not in str(answer)


@pytest.mark.parametrize("method", ["PUT", "DELETE", "OPTIONS", "TRACE", "PATCH"])
def test_other_methods_do_nothing(running, method):
    assert running.ask(method, f"/{running.token}/")[0] in (403, 405, 415)


def test_a_name_of_a_file_from_the_browser_leads_nowhere(running):
    for name in ("static/../app.py", "static/%2e%2e%2fapp.py", "static/page.html", "static/"):
        assert running.get(name)[0] == 404


@pytest.mark.parametrize("name", ["/etc/passwd", "../heron.svg", "C:\\x.svg", "a/b.svg"])
def test_a_text_from_the_browser_reads_no_file_by_a_path(running, name):
    text = (EXAMPLES / "heron.toml").read_text(encoding="utf-8").replace("heron.svg", name)
    status, answer = running.post("look", {"text": text})
    assert status == 200
    assert answer["seen"] is None
    assert "without a path" in answer["faults"][0]["says"]


def test_a_file_that_is_none_is_told_before_any_page(tmp_path):
    with page(tmp_path / "none.toml") as found:
        assert found.address == ""
        assert found.process.wait(timeout=20) == 2
        assert "no such file" in " ".join(found.process.stderr.read().split())


def test_it_ends_at_once_whatever_is_under_way(tmp_path):
    with page(folder=tmp_path) as found:
        found.get()
        began = time.monotonic()
        assert found.end() == 0
        assert time.monotonic() - began < 1.0
        assert found.process.stderr.read() == ""


def test_the_network_is_let_in_only_where_it_is_asked_for_and_that_is_said(tmp_path):
    (tmp_path / "block.toml").write_text(BLOCK, encoding="utf-8")
    with page("block.toml", "--lan", folder=tmp_path) as found:
        assert re.fullmatch(r"http://[\d.]+:\d+/[\w-]{32}/", found.address)
        found.process.stdout.readline()
        assert found.process.stdout.readline().startswith("CAUTION: anybody on your local network")
        assert found.get()[0] == 200
        assert found.ask("GET", f"/{found.token}/", host="evil.example")[0] == 421


def test_a_port_that_is_taken_is_told(running, tmp_path):
    with page("--port", running.port, folder=tmp_path) as found:
        assert found.address == ""
        assert found.process.wait(timeout=20) == 2
        assert f"port {running.port} cannot be had" in found.process.stderr.read()
