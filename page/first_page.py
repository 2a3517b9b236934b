"""The page as it is first handed out: its template filled with what is found by then."""

import json
from collections.abc import Mapping
from html import escape
from string import Template
from typing import Any

from .. import __version__
from .answers import Answer

_TEMPLATE = "page.html"


def filled_page(answer: Answer, state: Answer) -> str:
    """Return the page; its drawing stands in it before any script runs."""
    from .app import STATIC  # noqa: PLC0415 - it fills pages by this

    template = Template((STATIC / _TEMPLATE).read_text(encoding="utf-8"))
    seen: Mapping[str, Any] = answer["seen"] or {}
    slots = {
        name: seen.get(name, "")
        for name in ("front", "plan", "strip", "verdict", "rest", "numbers", "cautions")
    }
    return template.substitute(
        slots,
        not_checked=seen.get("not_checked", ""),
        title=escape(seen.get("name", state["file"] or "a piece")),
        size=escape(seen.get("size", "")),
        scale=escape(seen.get("scale", "")),
        version=escape(__version__),
        state=_data({**state, "answer": answer}),
    )


def _data(value: Any) -> str:
    """Return data to stand in markup: no sign in it can end the element around it."""
    text = json.dumps(value, ensure_ascii=True, allow_nan=False)
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
