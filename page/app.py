"""What the server answers: the page, its files, and what is asked of a text."""

import json
from asyncio import sleep
from collections.abc import AsyncIterator, Callable, Mapping
from functools import partial
from itertools import count
from pathlib import Path
from typing import Any, cast

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import (
    HTMLResponse,
    JSONResponse,
    PlainTextResponse,
    Response,
    StreamingResponse,
)
from starlette.routing import Route

from ..checks.examination import examine
from ..design.faults import DesignError
from ..design.reader.scan import Spot, seen
from ..report.printed.shop import Shop
from ..report.templates.typeset import NoTypesetterError
from ..report.wording.faults import fault_said
from ..units.frozen import ByValue
from . import first_page
from .answers import Answer, RecentTexts, read_from_browser
from .commands import Commands
from .edited import with_value
from .guard import TooMuchError
from .opened import ChangedMeanwhileError, NotWrittenError, Opened
from .papers import PAPERS, Handout, NotHandedOutError
from .ways import NotPutInError, Ways
from .worker import Worker

STATIC = Path(__file__).parent / "static"
TYPES = {".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml"}
_LONGEST_KIND = 40
_REST = 0.08
"""Seconds before the rest is worked out: while a tape is moved only what is soon known is."""


class WrongError(Exception):
    """What was sent is none of what the page sends."""


class Page(ByValue, frozen=True):
    """One page: the file that it is of, and what works things out for it.

    ``quick`` answers what is soon known while ``worker`` is at the rest.
    """

    opened: Opened
    commands: Commands
    answers: RecentTexts
    ways: Ways
    worker: Worker
    quick: Worker

    async def begin(self, _: Request) -> Response:
        """Return the page with its first drawing."""
        return HTMLResponse(await self.worker.do(self._first))

    def _first(self) -> str:
        """Return the page of the file as it stands on the disk, or of the first kind of piece."""
        if self.opened.file is None:
            kind = next(iter(self.commands.kinds))
            text, mark, saved = self.commands.starts(kind, False), "", ""
        else:
            text, mark = self._on_disk()
            kind, saved = "", text
        answer = self.answers.answer(text, self.opened.name, saved)
        return first_page.filled_page(answer, self._state(mark, saved, kind))

    def _on_disk(self) -> tuple[str, str]:
        read = self.opened.read()
        return read.text, read.mark

    def _state(self, mark: str, saved: str, kind: str) -> Answer:
        return {
            "file": None if self.opened.file is None else self.opened.file.name,
            "mark": mark,
            "saved": saved,
            "kind": kind,
            "kinds": dict(self.commands.kinds) if self.opened.file is None else {},
        }

    async def static(self, request: Request) -> Response:
        """Return a file of the page; only those that are there by name."""
        file = STATIC / Path(request.path_params["name"]).name
        if file.suffix not in TYPES or not file.is_file():
            return PlainTextResponse("There is no such file.\n", 404)
        return Response(file.read_bytes(), media_type=TYPES[file.suffix])

    async def look(self, request: Request) -> Response:
        """Answer a text, changed as is asked for: a line of what is soon known, one of the rest."""
        sent = await _sent(request)
        text, saved = _text(sent, "text"), _text(sent, "saved")

        name = self.opened.name

        def work() -> Answer:
            return self.answers.first(self._changed(text, sent), name, saved)

        heavy = isinstance(sent.get("way"), str)
        first = await (self.worker if heavy else self.quick).do(work)

        async def lines() -> AsyncIterator[str]:
            yield json.dumps(first) + "\n"
            await sleep(_REST)
            if first["seen"] is None or await request.is_disconnected():
                return
            rest = partial(self.answers.rest, first["text"], name, saved)
            yield json.dumps(await self.worker.do(rest)) + "\n"

        return StreamingResponse(lines(), media_type="application/x-ndjson")

    def _changed(self, text: str, sent: Mapping[str, Any]) -> str:
        """Return the text with what is asked for changed in it."""
        kind = sent.get("kind")
        if isinstance(kind, str):
            if kind not in self.commands.kinds:
                raise WrongError
            return self.commands.starts(kind, sent.get("metric") is True)
        if isinstance(sent.get("way"), str):
            self._ways_of(text)
            return self.ways.put_in(_text(sent, "way"), self.opened.folder)
        if isinstance(sent.get("tall"), str):
            design = read_from_browser(text, self.opened.name)
            return self.ways.stretched(text, design, _text(sent, "tall"), self.opened.folder)
        if isinstance(sent.get("weight"), str):
            design = read_from_browser(text, self.opened.name)
            typed = _text(sent, "weight")
            return self.ways.weighed(text, design, typed, self.opened.folder)
        for field, values in _edits(sent):
            text = with_value(text, field, values)
        return text

    def _ways_of(self, text: str) -> None:
        name = self.opened.name
        self.ways.begin(text, read_from_browser(text, name), self.answers.examined(text, name))

    async def hold(self, request: Request) -> Response:
        """Answer with the ways to hold a piece, a line for each as soon as it is worked out."""
        text = _text(await _sent(request), "text")

        def one(number: int) -> Answer | None:
            self._ways_of(text)
            return self.ways.told(number)

        async def lines() -> AsyncIterator[str]:
            for number in count():
                told = await self.worker.do(partial(one, number))
                if told is None:
                    return
                yield json.dumps(told) + "\n"

        await self.worker.do(partial(self._ways_of, text))  # what is wrong is told before all else
        return StreamingResponse(lines(), media_type="application/x-ndjson")

    async def paper(self, request: Request) -> Response:
        """Hand out a paper of the design; 409 with the reason where it is none to hand out."""
        sent = await _sent(request)
        text, what = _text(sent, "text"), _text(sent, "what")

        def work() -> Handout:
            name = self.opened.name
            shop = self.commands.shop(name) if name else Shop()
            design = self.commands.with_shop(read_from_browser(text, name), shop)
            return PAPERS[what](examine(design), shop, sent.get("draft") is True)

        try:
            made = await self.worker.do(work)
        except NotHandedOutError as why:
            return JSONResponse({"why": str(why), "draft": why.draft}, 409)
        except NoTypesetterError as missing:
            return JSONResponse({"why": f"{missing}."}, 409)
        called = f"{self.opened.stem}{made.ending}"
        named = {"content-disposition": f'attachment; filename="{called}"'}
        return Response(made.content, media_type=made.type, headers=named)

    async def file(self, request: Request) -> Response:
        """Return what stands on the disk by now."""
        sent = await _sent(request)
        if self.opened.file is None:
            raise WrongError

        def work() -> Answer:
            text, mark = self._on_disk()
            answer = self.answers.answer(text, self.opened.name, text)
            return {**answer, **self._state(mark, text, "")}

        del sent
        return JSONResponse(await self.worker.do(work))

    async def save(self, request: Request) -> Response:
        """Write the text; 409 where the file was changed meanwhile."""
        sent = await _sent(request)
        text, mark = _text(sent, "text"), _text(sent, "mark")

        def work() -> Answer:
            if sent.get("beside") is True:
                new = self.opened.save_beside(text)
            else:
                new = self.opened.save(text, mark, _text(sent, "called")[:_LONGEST_KIND])
            return self._state(new, text, "")

        try:
            return JSONResponse(await self.worker.do(work))
        except ChangedMeanwhileError:
            name = Path(self.opened.name).name
            return JSONResponse({"changed": True, "name": name}, 409)
        except NotWrittenError as why:
            return JSONResponse({"why": str(why)}, 409)


def application(page: Page, token: str) -> Starlette:
    """Return what answers under the token."""
    post: Mapping[str, Callable[[Request], Any]] = {
        "look": page.look,
        "file": page.file,
        "save": page.save,
        "hold": page.hold,
        "paper": page.paper,
    }
    routes = [
        Route(f"/{token}/", page.begin),
        Route(f"/{token}/static/{{name}}", page.static),
        *(Route(f"/{token}/{name}", do, methods=["POST"]) for name, do in post.items()),
    ]
    return Starlette(
        routes=routes,
        exception_handlers={
            WrongError: _wrong,
            TooMuchError: _too_much,
            DesignError: _unreadable,
            KeyError: _wrong,
            NotPutInError: _not_put_in,
        },
    )


async def _wrong(_: Request, __: Exception) -> Response:
    return PlainTextResponse("That is nothing that this page asks.\n", 400)


async def _too_much(_: Request, __: Exception) -> Response:
    return PlainTextResponse("That is more than a design file.\n", 413)


async def _not_put_in(_: Request, why: Exception) -> Response:
    return JSONResponse({"why": str(why)}, 409)


async def _unreadable(_: Request, wrong: Exception) -> Response:
    assert isinstance(wrong, DesignError)
    said = "; ".join(fault_said(fault) for fault in wrong.faults)
    return PlainTextResponse(f"{said}\n", 409)


async def _sent(request: Request) -> Mapping[str, Any]:
    try:
        sent: object = json.loads(await request.body())
    except (ValueError, RecursionError):
        raise WrongError from None
    if not isinstance(sent, dict):
        raise WrongError
    return cast("Mapping[str, Any]", sent)


def _text(sent: Mapping[str, Any], name: str) -> str:
    value: object = sent.get(name, "")
    if not isinstance(value, str):
        raise WrongError
    try:
        value.encode("utf-8")
    except UnicodeEncodeError:  # half a character
        raise WrongError from None
    return seen(value)


def _edits(sent: Mapping[str, Any]) -> list[tuple[Spot, list[str]]]:
    """Return which fields are changed, each with what was typed."""
    edits: object = sent.get("edits", [])
    if not isinstance(edits, list):
        raise WrongError
    found: list[tuple[Spot, list[str]]] = []
    for edit in cast("list[object]", edits):
        match edit:
            case [str() as field, [str() as only]]:
                found.append((_spot(field), [_text({"v": only}, "v")]))
            case [str() as field, [str() as a, str() as b, str() as c]]:
                found.append((_spot(field), [_text({"v": each}, "v") for each in (a, b, c)]))
            case _:
                raise WrongError
    return found


def _spot(field: str) -> Spot:
    """Return the place that a field's name stands for."""
    table, number, key = [*field.split("."), "", ""][:3]
    if not (number.isascii() and number.isdecimal() and len(number) < 4 and key.isidentifier()):
        raise WrongError
    return Spot(table, int(number), key)
