"""The commands: what each is for, its options with an example, and who does it."""

from .options import Command, takes, takes_nothing, takes_whole

_COUNT = "how many pieces, {least} to {most}: --count 3"
_FILE = takes("file", "FILE", "a design file, .toml")
_FILES = takes("files", "FILE", "a design file, .toml, or a folder of them", nargs="+")
_FORMAT = takes(
    "--format",
    None,
    "text for people (default), json in SI units for programs",
    choices=("text", "json"),
    default="text",
)
_FORCE = takes_nothing("--force", "write over a file that exists")
_PAPER = takes(
    "--paper",
    None,
    "a4 for metric designs, letter for imperial ones",
    choices=("a4", "letter"),
)
_DRAFT = takes_nothing("--draft", "of a piece that is not ready to sell, marked as such")


_OF_A_KIND = tuple(
    takes(f"--{name}", "…", example)
    for name, example in (
        ("kind", "tower, well, post or wheel"),
        ("sides", "6"),
        ("height", "of its body: '6 ft'"),
        ("body", "its width at bottom and top: '18 in, 10 in'"),
        ("walls", "'3/4 plywood'"),
        ("foot", "the narrowest, and its lumber: '24 in, 2x6 flat'"),
        ("ground", "'wet lawn'"),
        ("exposure", "'open', 'houses and trees' or 'shore'"),
        ("wind", "a forecast gust: '58 mph'"),
    )
)

COMMANDS = {
    "new": Command(
        "a starting file, by questions",
        "tower -o light.toml",
        "new",
        (
            takes(
                "kind",
                "KIND",
                "tower, well, post, sign, arbor, wheel, cut-out, barn, mailbox, birdhouse, "
                "footbridge, swing, obelisk, planter, a-frame or 'crossed boards'; asked for if "
                "left out",
                nargs="?",
            ),
            takes("-o --output", "FILE.toml", "where to write it"),
            _FORCE,
            takes_nothing("--defaults", "ask nothing: take every default"),
            takes_nothing("--metric", "metric sizes, lumber and sheets"),
        ),
    ),
    "check": Command(
        "the verdict on one design file or several",
        "light.toml --engineer",
        "check",
        (
            _FILES,
            _FORMAT,
            takes("--csv", "OUT.csv", "write a row for each design"),
            _FORCE,
            takes_whole("-j --jobs", "so many at a time; else all cores", 1, 256),
            takes_nothing("--engineer", "add utilization, clause, direction and factors"),
            takes_nothing("--numbers", "what each check has and needs, gusts and pulls"),
            takes_nothing("--as-read", "every size as it was read, and how to prove it"),
            takes_nothing("--assumed", "what was taken for granted"),
            takes_nothing("--cautions", "what to take care of, what was not looked at"),
            takes(
                "--explain",
                "CHECK",
                "a check's relation, source and inputs, each with where it came from: overturning, "
                "'joint: NAME'; may stand again",
                action="append",
            ),
            takes_nothing("--all", "all of these; each fault"),
        ),
    ),
    "page": Command(
        "the page: move a number, see the piece, read what happens; on this machine alone",
        "light.toml",
        "page",
        (
            takes("file", "FILE", "a design file, .toml; without one a new piece", nargs="?"),
            takes_whole(
                "--port", "where it listens; 0, if not said, takes any that is free", 0, 65535, 0
            ),
            takes_nothing("--no-browser", "open no browser; the address is printed"),
            takes_nothing(
                "--lan",
                "for a phone in the yard: anybody on the local network who has the "
                "address may read and change the file",
            ),
        ),
    ),
    "mend": Command(
        "put right what is surely meant in a design file, the old text kept beside it",
        "light.toml",
        "mend",
        (_FILE, takes_nothing("--yes", "put in all that is sure, without asking")),
    ),
    "draw": Command(
        "the drawing: elevation, plan, gusts by side",
        "light.toml -o light.svg",
        "draw",
        (
            _FILE,
            takes_nothing("--text", "in characters, 80 columns wide"),
            takes("-o --output", "OUT.svg", "a picture to scale: .svg, .png or .pdf"),
            _PAPER,
            _FORCE,
        ),
    ),
    "size": Command(
        "what holds a piece down, each way alone",
        "light.toml --write heavy.toml --remedy ballast",
        "size",
        (
            takes("file", "FILE", "a design file, .toml", nargs="?"),
            _FORMAT,
            takes_nothing("--all", "every way alone, gusts by foot and weight, joints"),
            takes("--write", "NEW.toml", "write the design changed; never over"),
            takes(
                "--remedy",
                "REMEDY",
                "which: 'base width', 'ballast', 'anchors', 'guys', 'height' or 'wind'",
            ),
            _OF_A_KIND[0]._replace(heading="before there is a file"),
            *_OF_A_KIND[1:],
        ),
    ),
    "sweep": Command(
        "one design at many sizes: gusts, weight and word over one or two of them",
        "light.toml --vary 'foot.across=18 in..36 in'",
        "sweep",
        (
            _FILE,
            takes(
                "--vary",
                "PART.KEY=A..B",
                "a size, from and to: 'foot.across=18 in..36 in'; once or twice",
                action="append",
                required=True,
            ),
            takes_whole("--steps", "so many values of each; 7 if not said", 2, 200, 7),
            _FORMAT,
            takes("--csv", "OUT.csv", "write a row for each size"),
            takes("-o --output", "OUT.svg", "a picture: .svg, .png or .pdf"),
            _FORCE,
        ),
    ),
    "odds": Command(
        "how likely a piece tips or slides, of many like it",
        "light.toml --samples 1000000",
        "odds",
        (
            _FILE,
            _FORMAT,
            takes_whole(
                "--samples", "so many like it; 100000 if not said", 1, 100_000_000, 100_000
            ),
            takes_whole("--seed", "another draw of them; 1 if not said", 0, 100_000_000, 1),
            takes_whole("--years", "within so many years; 10 if not said", 1, 1000, 10),
            takes_nothing("--inputs", "what varies, by how much and who says so"),
        ),
    ),
    "compare": Command(
        "one piece by every book of wind, or two designs",
        "light.toml",
        "compare",
        (
            _FILE,
            takes("second", "FILE2", "another: what changed, and what it did", nargs="?"),
            _FORMAT,
        ),
    ),
    "cuts": Command(
        "what to saw and to buy for a piece, and where its stakes go",
        "light.toml --count 3 -o shop.pdf",
        "cuts",
        (
            _FILE,
            _FORMAT,
            takes(
                "-o --output", "OUT", "write it: .pdf a page to tick off, .svg or .dxf full size"
            ),
            takes_nothing("--stakes", "where what holds it is set out, in place of the list"),
            # beyond a hundred the layout on sheets takes long
            takes_whole("--count", "for so many of a kind", 1, 100, 1, _COUNT),
            _FORCE,
        ),
    ),
    "sheet": Command(
        "the stability sheet on paper, for the buyer",
        "light.toml -o light.pdf",
        "sheet",
        (
            _FILES,
            takes(
                "-o --output",
                "OUT",
                "where to write it: OUT.pdf, or a folder for many; left out: beside each design",
            ),
            takes_nothing("--full", "the whole calculation instead, step by step"),
            _DRAFT,
            _PAPER,
            _FORCE,
        ),
    ),
    "label": Command(
        "text for a listing, of one design or a folder",
        "my-designs -o labels.csv",
        "label",
        (
            _FILES,
            takes(
                "--format",
                None,
                "text to copy, csv a row each for a spreadsheet, json for programs; left out: as "
                "the name of OUT ends, else text",
                choices=("text", "csv", "json"),
            ),
            takes("-o --output", "OUT", "where to write it"),
            _DRAFT,
            _FORCE,
        ),
    ),
    "stale": Command(
        "which printed sheets are no longer current",
        "labels.csv",
        "stale",
        (
            takes(
                "printed",
                "LABELS.csv",
                "a table that 'label --format csv' wrote; or FILE.toml and, behind it, the "
                "fingerprint on its sheet",
                nargs="+",
            ),
            _FORMAT,
        ),
    ),
    "materials": Command(
        "what each material's name means, with sources", "", "listing", (_FORMAT,), "materials"
    ),
    "grounds": Command(
        "what each ground's name means, with sources",
        "--format json",
        "listing",
        (_FORMAT,),
        "grounds",
    ),
    "fasteners": Command(
        "what a nail or screw holds in a wood",
        "'8d common' --wood 'western redcedar'",
        "fasteners",
        (
            takes("name", "NAME", "which: '8d common', 'lag screw', '#8'; all without", nargs="?"),
            takes("--wood", "NAME", "a wood or panel: 'western redcedar'"),
            takes("--side", "…", "how thick the board is that it fastens", default="3/4 in"),
            _FORMAT,
        ),
    ),
    "schema": Command(
        "what a design file may hold, or a result or the odds hold, as a JSON Schema",
        "design",
        "schema",
        (
            takes(
                "of",
                None,
                "of the design file (default), or of what check or odds prints by '--format json'",
                nargs="?",
                choices=("design", "result", "odds"),
                default="design",
            ),
        ),
    ),
    "verify": Command(
        "every published answer that ships, worked out again beside its print",
        "--format json",
        "verify",
        (_FORMAT,),
    ),
}
"""Every command, in the order in which help shows them."""
