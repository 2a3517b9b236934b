"""Lines of a design file as `yardfast new` writes them: keys aligned, comments behind."""

from collections.abc import Sequence

KeyLine = tuple[str, str, str]
"""A key, its value as TOML has it, and a comment or nothing."""

_VALUE_WIDTH = 20


def block(heading: str, *rows: KeyLine) -> str:
    """Return a table: its heading and its rows."""
    widest = max(len(key) for key, _, _ in rows)
    lines = [heading]
    for key, value, comment in rows:
        line = f"{key:<{widest}} = {value}"
        lines.append(f"{line:<{widest + 3 + _VALUE_WIDTH}} # {comment}" if comment else line)
    return "\n".join(lines) + "\n"


def part(name: str, shape: str, rows: Sequence[KeyLine], says: str = "") -> str:
    """Return a ``[[part]]`` with its name and shape."""
    return block("[[part]]", ("name", f"'{name}'", ""), ("shape", f"'{shape}'", says), *rows)


def text_line(key: str, value: str, comment: str = "") -> KeyLine:
    """Return a row whose value is text."""
    return key, f"'{value}'", comment
