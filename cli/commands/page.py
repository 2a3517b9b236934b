"""``yardfast page [FILE]``: the page on this machine, with what the commands do."""

import gc
from argparse import Namespace
from pathlib import Path

from ...report.wording.faults import clean
from ..refused import RefusedError

ENDED = 0
_OBJECTS_BETWEEN_SEARCHES = 2_000
"""A page runs for hours: objects in circles are looked for as often as is usual."""

_INSTALL = '.venv/bin/pip install -e ".[page]"'


def run(arguments: Namespace) -> int:
    """Serve the page until it is interrupted; return 0. Refuses a file that cannot be read."""
    try:
        from ...page.commands import Commands  # noqa: PLC0415 - other commands do without
        from ...page.opened import Opened  # noqa: PLC0415
        from ...page.server import NoPortError, listen, serve  # noqa: PLC0415
    except ImportError as missing:
        why = f"the page needs the package '{missing.name}'; install it with  {_INSTALL}"
        raise RefusedError(why, "") from None
    from ..files.changed_text import changed_text  # noqa: PLC0415
    from ..files.designs import shop_of, with_shop  # noqa: PLC0415
    from ..files.written import write  # noqa: PLC0415
    from ..starting.pieces import PIECE_KINDS, piece  # noqa: PLC0415
    from .new import default_file  # noqa: PLC0415

    commands = Commands(
        kinds={kind: piece(kind).says for kind in PIECE_KINDS},
        starts=default_file,
        changed=changed_text,
        shop=shop_of,
        with_shop=with_shop,
        write=lambda file, data, over: write(file, data, force=over),
    )
    file = None if arguments.file is None else Path(arguments.file)
    opened = Opened(file, Path.cwd(), commands)
    if file is not None:
        opened.read()  # what cannot be read at all is told here, not in a browser
    gc.set_threshold(_OBJECTS_BETWEEN_SEARCHES)
    try:
        where = listen(arguments.port, lan=arguments.lan)
    except NoPortError as why:
        raise RefusedError(str(why), "Without --port any that is free is taken.") from None
    serve(where, opened, commands, browser=not arguments.no_browser, says=_says(arguments, file))
    return ENDED


def _says(arguments: Namespace, file: Path | None) -> list[str]:
    """Return what is printed below the address."""
    of = "a new piece" if file is None else clean(str(file))
    said = [f"The page of {of} is at this address until you press Ctrl-C."]
    if arguments.lan:
        said.append(
            "CAUTION: anybody on your local network who has this address can read and change the "
            "file, and what is sent is not encrypted. Leave it on only while you need it."
        )
    return said
