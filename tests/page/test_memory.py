"""A page that is open for hours: a thousand changes leave its memory as it was."""

from pathlib import Path

import pytest
from page_server import BLOCK, page

CHANGES, WARM = 1000, 150


def _kilobytes(process):
    """Return the memory that a process holds, as Linux tells it."""
    status = Path(f"/proc/{process.pid}/status").read_text(encoding="utf-8")
    return int(next(line for line in status.splitlines() if line.startswith("VmRSS")).split()[1])


@pytest.mark.slow
@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory as Linux tells it")
def test_a_thousand_changes_leave_memory_flat(tmp_path):
    (tmp_path / "block.toml").write_text(BLOCK, encoding="utf-8")
    with page("block.toml", folder=tmp_path) as running:
        held = []
        for k in range(WARM + CHANGES):
            if k == WARM:
                held.append(_kilobytes(running.process))
            text = BLOCK.replace("'12 in'", f"'{12.0 + 0.01 * k:.2f} in'")
            status, answer = running.post("look", {"text": text, "saved": BLOCK})
            assert status == 200
            assert answer["seen"]["verdict"]
        held.append(_kilobytes(running.process))
        print(f"memory after {WARM} changes and {CHANGES} more: {held} kB")
        assert held[1] - held[0] < 10_000
