"""The page's server as a user starts it, and a plain client that asks it anything."""

import json
import os
import signal
import subprocess
import sys
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.client import HTTPConnection
from urllib.parse import urlsplit

BLOCK = """\
# A block of concrete at the gate: it stands by itself, which is soon worked out.
[design]
name  = 'Gate block'
units = 'imperial'               # how results are shown

[site]
method   = 'forecast'
wind     = '40 mph'              # a windy day
exposure = 'open'
ground   = 'gravel'

[[part]]
name     = 'block'
shape    = 'box'
length   = '24 in'
width    = '16 in'
height   = '12 in'
material = 'concrete'
"""


@dataclass
class Running:
    """A server that runs: its process and its address, with what it printed first."""

    process: subprocess.Popen
    address: str
    says: list[str] = field(default_factory=list)

    @property
    def port(self):
        return urlsplit(self.address).port

    @property
    def token(self):
        return urlsplit(self.address).path.strip("/")

    def ask(self, method, path, body=None, headers=None, host=None):
        """Return status, headers and body of an answer to anything."""
        connection = HTTPConnection("127.0.0.1", self.port, timeout=60)
        sent = {"Host": host or f"127.0.0.1:{self.port}", **(headers or {})}
        connection.request(method, path, body, sent)
        answer = connection.getresponse()
        found = answer.status, answer.headers, answer.read()
        connection.close()
        return found

    def get(self, path=""):
        return self.ask("GET", f"/{self.token}/{path}")

    def post(self, what, sent, **headers):
        """Return status and answer of what the page itself asks."""
        given = {"Content-Type": "application/json", "Origin": f"http://127.0.0.1:{self.port}"}
        status, _, body = self.ask(
            "POST", f"/{self.token}/{what}", json.dumps(sent), {**given, **headers}
        )
        if body[:1] not in (b"{", b"["):
            return status, body.decode()
        lines = [json.loads(line) for line in body.splitlines()]
        return status, {key: value for line in lines for key, value in line.items()}

    def end(self):
        """End it as Ctrl-C does; return its status."""
        self.process.send_signal(signal.SIGINT)
        return self.process.wait(timeout=5)


@contextmanager
def page(*arguments, folder=None):
    """Start `yardfast page` on a free port without a browser; end it afterwards."""
    command = [sys.executable, "-m", "yardfast", "page", *map(str, arguments), "--no-browser"]
    process = subprocess.Popen(
        command,
        cwd=folder,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONUNBUFFERED": ""},
    )
    running = Running(process, process.stdout.readline().strip())
    try:
        yield running
    finally:
        if process.poll() is None:
            process.kill()
        process.communicate()
