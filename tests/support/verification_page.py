"""The page of published answers beside ours, made from what the command recomputes.

.venv/bin/python tests/support/verification_page.py     # writes references/verification.md anew
"""

from pathlib import Path

from yardfast.checks.verification.recomputed import recomputed
from yardfast.report.screens.verification import verification_page

PAGE = Path(__file__).resolve().parents[2] / "references" / "verification.md"


def page() -> str:
    """Return the page as it should stand."""
    return verification_page(recomputed())


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
    print(f"{PAGE} is written")
