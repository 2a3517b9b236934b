"""``python -m yardfast``, the same as the command ``yardfast``."""

import sys

from .cli import command

if __name__ == "__main__":
    sys.exit(command())
