"""The page of every key that a design file may hold, made from what the reader itself accepts.

.venv/bin/python tests/support/keys_page.py     # writes examples/KEYS.md anew
"""

from pathlib import Path

from yardfast import units
from yardfast.checks.inputs import SPECS
from yardfast.design.builds.shape_keys import SHAPES
from yardfast.design.file.document import DESIGN_KEYS
from yardfast.design.file.part_table import PART_KEYS
from yardfast.design.reader.kind_words import belongs
from yardfast.design.reader.schema import Key
from yardfast.materials import anchors, guy_lines

PAGE = Path(__file__).resolve().parents[2] / "examples" / "KEYS.md"

TABLES = {
    "design": "Once: what it is called and how its results are shown.",
    "site": "Once: which wind, by which method, on which ground.",
    "part": "Each part: what it is called, its shape, what it is made of, where it stands.",
    "load": "Each person or thing that pulls or presses beside the wind.",
    "anchor": "Stakes, screws, bolts or buried weights that hold the foot to the ground.",
    "ballast": "Weight laid on the piece, or inside it.",
    "joint": "How one part is fastened to another.",
    "seam": "How the panels of a many-sided shell are fastened to one another along its corners.",
    "record": "What was measured on the finished piece; it changes no calculation.",
    "guy": "Ropes or cables from the piece down to anchors round it.",
    "odds": "What varies otherwise than published, for `yardfast odds`, as a factor on it.",
}
NAMES_OF = {
    ("part", "material"): "a name of `yardfast materials`",
    ("anchor", "kind"): "one of the [anchors](#names-of-anchors)",
    ("guy", "anchor"): "one of the [anchors](#names-of-anchors)",
    ("guy", "line"): "one of the [ropes and cables](#names-of-ropes-and-cables)",
}
"""Where a long list of names stands."""

SAYS = {
    "design": {
        "name": "what the piece is called",
        "units": "how results are shown; sizes may be typed in either",
        "turn": "turns the finished piece on its site, counter-clockwise from above, last of all",
        "weighed": "what a scale reads for the whole piece: all parts by material follow it",
        "laid_down": "that it is meant to be laid down in wind: its advice is then that alone",
        "maker": "who built it",
        "contact": "how a buyer reaches them",
        "serial": "of this one piece",
        "date": "when it was made or worked out",
        "revision": "of the design",
        "format": "of this file; 1 so far",
    },
    "site": {
        "method": "`forecast`: a 3-second gust as forecasts and warnings state it; `gust`: that "
        "at the piece itself; ASCE 7: the speed of a map; EN 1991-1-4: v_b,0, a ten-minute mean",
        "wind": "the wind asked for, of the kind that `method` says",
        "ground": "what it stands on; `yardfast grounds` tells what each name means",
        "exposure": "what lies around it; needed but with `gust` and EN 1991-1-4",
        "wind_kind": "whether a map's speed is ultimate or nominal; `mean` of a v_b,0 above 40 m/s",
        "terrain": "of EN 1991-1-4: 0 sea, I flat, II grass, III villages and woods, IV town",
        "direction_factor": "of EN 1991-1-4, c_dir, where a National Annex says so",
        "season_factor": "of EN 1991-1-4, c_season, where a National Annex says so",
        "probability_factor": "of EN 1991-1-4, c_prob, for another return period than 50 years",
        "turbulence_factor": "of EN 1991-1-4, k_I, where a National Annex says so",
        "air_density": "of EN 1991-1-4, where a National Annex says so",
        "orography": "of EN 1991-1-4, c_o of a hill or crest; 1 on level ground",
        "wind_source": "where the wind comes from, to be repeated back",
        "slope": "of the ground, the worst way round; level if not given",
        "elevation": "of the site above the sea: thinner air pushes less",
        "topographic": "Kzt of a hill or crest; 1 on level ground",
        "basis": "which factors: `service` with `safety`, or those of allowable stress, "
        "strength or EN 1990 (`EQU`, with STR for joints and members)",
        "timber": "the book for wood and fasteners; EN 1995-1-1 with EN 1991-1-4, else NDS",
        "safety": "how much to spare with `service`; 1.5 if not given",
        "people": "who may push or climb: a push by children or the public is then a check",
        "gust_record": "the file of this place's yearly or daily peak gusts, one to a line",
        "gusts_recorded": "how often the record has a peak; yearly if not given",
        "hurricane": "whether the site lies in a hurricane region",
        "country": "whose numbers for help and rules are named",
        "gusts": "local forecast gusts by return period, two or more: tells how often one comes",
        "sheltering": "credits the shelter that one row of parts gives the next",
        "return_period": "of the map's speed, to be repeated back",
        "risk_category": "of the map's speed, to be repeated back",
    },
    "load": {
        "name": "what pulls or presses",
        "force": "how hard",
        "at": "where, from the middle of the design",
        "direction": "which way; an angle is level, clockwise from the back",
        "on": "the part that it acts on, if not the nearest; `at` stays from the design's middle",
    },
    "anchor": {
        "name": "what these are called",
        "kind": "what they are",
        "where": "at places of the foot",
        "at": "at one point, or the middle of `ring`",
        "ring": "round a circle of this diameter, against the foot or through it, with `count`",
        "count": "how many round the ring",
        "start": "plan angle of the first, from the right, counter-clockwise",
        "head": "how it holds the foot down at its top",
        "pull_test": "the straight pull that one withstood here, in the wet season",
        "saturated": "whether the ground can stand full of water, so that what is buried floats up",
        "depth": "how deep the middle of a buried weight lies",
        "inset": "how far in from the foot's edges, with `where`",
    },
    "ballast": {
        "name": "what it is called",
        "kind": "what it is; or `mass`",
        "mass": "what each weighs; or `kind`",
        "count": "how many; 1 if not given",
        "on": "the part that it lies on or is fixed to",
        "inside": "the part that it lies inside of, which has a floor",
        "at": "moves it from the middle of that part; several without it lie round an open middle",
    },
    "guy": {
        "name": "what they are called",
        "line": "rope or cable, by kind and size",
        "anchor": "what each ends in at the ground",
        "height": "how high each is fast on the piece",
        "radius": "how far from the middle each meets the ground",
        "count": "how many, evenly round",
        "start": "plan angle of the first, from the right, counter-clockwise",
        "out": "how far from the middle each is fast on the piece, within or at its outline",
        "at": "moves the middle of all",
        "end": "the knot or end; the usual one of its kind if not given",
        "pull_test": "the straight pull that one anchor withstood here, in the wet season",
    },
    "record": {
        "kind": "what was measured",
        "value": "what was read",
        "date": "when",
        "by": "who read it",
        "height": "how high the scale was hooked, of a tipping test",
    },
    "joint": {
        "name": "what it is called",
        "of": "the part that is fastened",
        "to": "the part that it is fastened to, which carries it",
        "fastener": "by its trade name; `yardfast fasteners` lists them",
        "count": "how many at each place where a copy of one touches a copy of the other",
        "where": "round a ring, in two rows, or as many on each side; evenly if not given",
        "ring": "round a circle of this diameter",
        "start": "plan angle of the first on the ring, from the right, counter-clockwise",
        "length": "of the rectangle that two rows fill, with `width`",
        "width": "of that rectangle, from row to row",
        "points": "where each stands: right and away; on an upright face along it and up",
        "through": "what each goes through, if not the part's own; of `blocks`, how thick they are",
        "head_in": "the one of the two parts that has the heads; the thinner if not given",
        "into": "what the points go into; as the part lies if not given",
        "predrilled": "whether lead holes are drilled",
        "toe_nailed": "whether nails slant in from the side",
        "blocks": "the wood of blocks or cleats inside, to which both parts are fastened",
        "washer": "its diameter, under the head; of bolts at both ends",
        "steel_plate": "its thickness, under the head",
        "made_wet": "whether the wood is wet when fastened; the worse of both if not given",
        "stays_dry": "whether it stays under a roof and dry",
        "glue": "whether it is glued too: shown, never counted",
        "crown": "how a staple's crown lies to the grain under it; along it, the weaker, if not "
        "given",
    },
    "seam": {
        "part": "the upright many-sided shell whose seams they are",
        "fastener": "by its trade name; `yardfast fasteners` lists them",
        "spacing": "from one to the next along a corner, in each of its two panels",
        "cleat": "the wood of the strip inside each corner that they go into; without it they go "
        "into the next panel's edge, where nothing counts",
        "predrilled": "whether lead holes are drilled",
        "made_wet": "whether the wood is wet when fastened; the worse of both if not given",
        "stays_dry": "whether it stays under a roof and dry",
        "crown": "how a staple's crown lies to the grain under it; along it, the weaker, if not "
        "given",
    },
    "odds": {
        "name": "what varies; `yardfast odds FILE --inputs` tells what is published of each",
        "spread": "its standard deviation over its mean, the coefficient of variation",
        "mean": "times what is written or published; 1 if not given",
        "low": "the least that it can be; 0 if not given",
        "high": "the most that it can be; without end if not given",
        "shape": "of its distribution",
    },
    "part": {
        "embed": "how deep it stands in the ground; it then carries the piece",
        "encased": "how wide the concrete round it is, in the ground",
        "constrained": "whether paving or a rigid floor holds it at the surface",
        "may_move": "whether it may lean half an inch there: the earth is asked for twice as much",
        "fill": "what lies in a hollow body with a floor",
        "fill_depth": "how high it lies; to the top if not given",
        "name": "what it is called; each part has its own",
        "shape": "one of those below",
        "material": "what it is made of: gives weight and friction",
        "density": "in place of a material",
        "mass": "of one copy, as weighed; may stand beside a material",
        "contact": "what it rubs on the ground as, where the material does not say",
        "covering": "what lies on its outer slopes: adds weight",
        "on": "the part that it stands on",
        "under": "the part that it hangs under",
        "at": "moves it from there: right, away, up",
        "tilt": "leans its top away from you",
        "turn": "about its own upright middle, counter-clockwise from above",
        "count": "how many copies, with `ring` or `step`",
        "ring": "copies round a circle of this diameter",
        "start": "plan angle of the first copy, from the right",
        "step": "copies in a row, each moved on by this",
        "mirror": "reflected copies: left and right (`x`), front and back (`y`)",
        "loose": "it only stands there by its weight, and is judged by itself as well",
        "hangs_at": "it swings from a hook at this height",
        "grade": "of its lumber, as stamped; the lowest commonly sold if not given",
    },
}
SHAPE_SAYS = {
    "sides": "how many flat sides; 0 is round",
    "bottom": "width at the bottom, flat to flat",
    "top": "width at the top, flat to flat",
    "across": "width, flat to flat; a diameter if round",
    "hole": "width of the hole through it",
    "height": "straight up; of a frame, that of its lumber",
    "panel_length": "along the slope, in place of `height`",
    "wall": "thickness, square to the wall; hollow with it",
    "stock": "a sheet as sold, `'3/4 plywood'`, in place of `wall` or `thickness`",
    "lumber": "as sold, `'2x4 flat'`, `'2x4 on edge'`, `'4x4'`, in place of its two sizes",
    "surface": "how smooth a round one is",
    "length": "left to right; of a roof along the ridge",
    "width": "front to back; of a panel left to right; of a frame that of its lumber in plan; of a "
    "member the one that lies level",
    "breadth": "of a frame that is no polygon, front to back",
    "open": "faces that are missing",
    "top_length": "of a tapered box, at the top",
    "top_width": "of a tapered box, at the top; 0 makes a hip",
    "thickness": "of the board, plate, slope or blade",
    "knee_width": "of a gambrel roof, at its knee",
    "knee_height": "of a gambrel roof, at its knee",
    "solidity": "the share that is wood, of a lattice or slats",
    "climbers": "whether vines grow over it: then it is taken as closed",
    "blades": "how many",
    "profile": "from the foot up, each two lengths: the radius, and the height at which it is so",
    "bar": "width of a hoop's bar, flat to flat, or its diameter where it is round",
    "span": "length of one blade from the middle of the hub",
    "root": "a blade's width at the hub",
    "tip": "a blade's width at its end",
    "facing": "the way that its front looks, clockwise from the back",
    "pitch": "how far the blades are turned out of the wheel's plane",
    "spins": "whether it turns in the wind",
    "yaws": "whether it swings into the wind",
    "from": "where its middle line begins: right, away, up",
    "to": "where its middle line ends",
    "depth": "square to its level `width`",
    "cut": "how its ends are cut",
    "points": "corners of the outline, right and up",
    "holes": "outlines that are cut out of it",
    "outline": "a drawing of the outline, an .svg file beside the design",
}
_ENDS = {"_side": "by one edge", "_points": "corner to corner"}


def page() -> str:
    """Return the page."""
    keys = {"design": DESIGN_KEYS, "site": SPECS[0].keys, "part": PART_KEYS}
    keys |= {spec.name: spec.keys for spec in SPECS}
    many = {"part", *(spec.name for spec in SPECS if spec.many)}
    blocks = [_HEAD]
    for name, of in keys.items():
        heading = f"[[{name}]]" if name in many else f"[{name}]"
        rows = [_row(name, key, SAYS.get(name, {}).get(key.name, "")) for key in of]
        blocks.append(f"## `{heading}`\n\n{TABLES.get(name, '')}\n\n{_table(rows)}")
        if name == "part":
            blocks.append(_shapes())
    blocks.append("## Names of anchors\n\n" + _names(anchors.anchor_names()))
    blocks.append("## Names of ropes and cables\n\n" + _names(guy_lines.line_names()))
    return "\n\n".join(blocks) + "\n"


def missing() -> list[str]:
    """Return the keys of which nothing is said."""
    tables = {"design": DESIGN_KEYS, "part": PART_KEYS} | {spec.name: spec.keys for spec in SPECS}
    found = [
        f"{table}: {key.name}"
        for table, keys in tables.items()
        for key in keys
        if not SAYS.get(table, {}).get(key.name)
    ]
    shapes = {key.name for spec in SHAPES.values() for key in spec.keys}
    return found + [f"shape: {name}" for name in sorted(shapes) if not _shape_says(name)]


_HEAD = """\
# Keys of a design file

Every table, and every key that it may hold; **bold** ones are needed. A size is text with its unit:
`'36 in'`, `'4 ft 6 in'`, `'910 mm'`, above 0 unless said, and at most 100 ft. From where you stand
before the piece, x is to the right, y away from you, z up. Tables in double brackets may stand many
times. This page is made from what the reader accepts; a test holds the two together."""


def _shapes() -> str:
    """Return the keys of each shape, and what each of these says."""
    which = "| shape | keys |\n|---|---|\n" + "\n".join(
        f"| `{name}` | {' '.join(f'`{key.name}`' for key in spec.keys) or 'none: its `mass`'} |"
        for name, spec in SHAPES.items()
    )
    every = {key.name: key for spec in SHAPES.values() for key in spec.keys}
    rows = [_row("part", key, _shape_says(name)) for name, key in every.items()]
    return f"### Keys of the shapes\n\n{which}\n\n{_table(rows)}"


def _shape_says(name: str) -> str:
    for ending, how in _ENDS.items():
        if name.endswith(ending) and name.removesuffix(ending) in SHAPE_SAYS:
            return f"`{name.removesuffix(ending)}` {how}"
    return SHAPE_SAYS.get(name, "")


def _table(rows: list[str]) -> str:
    return "\n".join(["| key | says | what belongs there |", "|---|---|---|", *rows])


def _row(table: str, key: Key, says: str) -> str:
    shown = f"**`{key.name}`**" if key.required else f"`{key.name}`"
    return f"| {shown} | {says} | {_belongs(table, key)} |"


def _belongs(table: str, key: Key) -> str:
    """Return what belongs to a key: names, or a kind with an example, and bounds of its own."""
    words, example = belongs(key, metric=False)
    kind = units.UNIT_KINDS[key.kind].phrase if key.kind in units.UNIT_KINDS else words
    names = [f"`'{name}'`" for name in key.names()]
    if names:
        listed = NAMES_OF.get((table, key.name), ", ".join(names))
        return f"{listed}, or {kind}, `{example}`" if key.kind in units.UNIT_KINDS else listed
    bounds = f"; {key.bounds.words}" if key.bounds else ""
    plain = key.kind in ("count", "number")
    typed = not key.bounds or not plain or key.bounds.hold(float(example))
    return f"{kind}{f', `{example}`' if typed else ''}{bounds}"


def _names(names: list[str]) -> str:
    return "\n".join(f"- `'{name}'`" for name in names)


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8", newline="\n")
