"""Who may ask: only a page of this server, from this machine, with its token; and what is sent."""

from collections.abc import Collection
from secrets import compare_digest

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

_MOST_BYTES = 5_000_000
"""So many bytes may be sent to it: two texts of at most 1 MB, written as JSON."""

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self'",
        "connect-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "content-security-policy": POLICY,
    "cache-control": "no-store",
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
}


class Guard:
    """Lets through what names this server and its token, and is sent by its own page."""

    def __init__(self, app: ASGIApp, token: str, hosts: Collection[str]) -> None:
        self._app = app
        self._token = token
        self._hosts = frozenset(hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or refuse in a sentence."""
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self._app(scope, receive, send)
            return

        async def with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers[name] = value
            await send(message)

        refused = self._refused(scope)
        if refused is not None:
            await refused(scope, receive, with_headers)
            return
        await self._app(scope, _at_most(receive), with_headers)

    def _refused(self, scope: Scope) -> PlainTextResponse | None:
        headers = Headers(scope=scope)
        if headers.get("host", "").casefold() not in self._hosts:
            return PlainTextResponse("This page answers under its own address alone.\n", 421)
        _, first, *_ = [*scope["path"].split("/"), ""]  # of "OPTIONS *" there is no second
        if not compare_digest(first.encode(), self._token.encode()):
            said = "Open the whole address that yardfast page printed, its last part too.\n"
            return PlainTextResponse(said, 403)
        if scope["method"] in ("GET", "HEAD"):
            return None
        own = headers.get("origin", f"http://{headers['host']}")
        if own.casefold() not in {f"http://{host}" for host in self._hosts}:
            return PlainTextResponse("Another page asked for this.\n", 403)
        if headers.get("sec-fetch-site", "same-origin") not in ("same-origin", "none"):
            return PlainTextResponse("Another page asked for this.\n", 403)
        if headers.get("content-type", "").partition(";")[0].strip() != "application/json":
            return PlainTextResponse("JSON is asked for here.\n", 415)
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > _MOST_BYTES:
            return PlainTextResponse("That is more than a design file.\n", 413)
        return None


class TooMuchError(Exception):
    """More was sent than a design file holds."""


def _at_most(receive: Receive) -> Receive:
    """Return what receives at most so many bytes, however they come."""
    got = 0

    async def limited() -> Message:
        nonlocal got
        message = await receive()
        got += len(message.get("body", b""))
        if got > _MOST_BYTES:
            raise TooMuchError
        return message

    return limited
