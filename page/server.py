"""The server on this machine: where it listens, what it prints, and that it ends at once."""

import secrets
import socket
import webbrowser
from collections.abc import Sequence
from threading import Thread

import uvicorn

from ..units.frozen import ByValue
from .answers import RecentTexts
from .app import Page, application
from .commands import Commands
from .guard import Guard
from .opened import Opened
from .ways import Ways
from .worker import Worker

LOOPBACK = "127.0.0.1"
_TOKEN = 24
"""Bytes of the token: 192 bits, as a random name of 32 letters."""


class NoPortError(Exception):
    """The port cannot be listened on."""


class Where(ByValue, frozen=True):
    """Where it listens: its socket, the addresses under which it is asked for, and its own."""

    listening: socket.socket
    hosts: tuple[str, ...]
    address: str


def listen(port: int, *, lan: bool) -> Where:
    """Return where the page is to be had; ``port`` 0 takes any. NoPortError.

    On this machine alone, unless the local network is asked for.
    """
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind(("0.0.0.0" if lan else LOOPBACK, port))
    except OSError as error:
        listening.close()
        raise NoPortError(f"port {port} cannot be had: {error.strerror}") from None
    listening.listen()  # who is told the address may ask at once
    given = listening.getsockname()[1]
    names = [_on_the_network()] if lan else []
    names += [LOOPBACK, "localhost"]
    return Where(listening, tuple(f"{name}:{given}" for name in names), f"{names[0]}:{given}")


def _on_the_network() -> str:
    """Return this machine's address on the local network; no packet is sent to find it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # of RFC 5737: for documents, never reached
        except OSError:
            return LOOPBACK
        return str(asking.getsockname()[0])


def serve(
    where: Where, opened: Opened, commands: Commands, *, browser: bool, says: Sequence[str]
) -> None:
    """Print the address, then answer until it is interrupted."""
    token = secrets.token_urlsafe(_TOKEN)
    address = f"http://{where.address}/{token}/"
    page = Page(opened, commands, RecentTexts(), Ways(commands), Worker(), Worker())
    app = Guard(application(page, token), token, where.hosts)
    print(address, flush=True)
    for each in says:
        print(each, flush=True)
    if browser:
        Thread(target=webbrowser.open, args=(address,), daemon=True).start()
    settings = uvicorn.Config(
        app,
        log_level="critical",
        access_log=False,
        lifespan="off",
        server_header=False,
        ws="none",
        timeout_graceful_shutdown=0,
    )
    _EndsAtOnce(settings).run(sockets=[where.listening])


class _EndsAtOnce(uvicorn.Server):
    """A server that waits for nothing that is under way when it is told to end."""

    def handle_exit(self, sig: int, frame: object) -> None:
        """Leave, whatever is open still."""
        del sig, frame
        self.should_exit = True
        self.force_exit = True
