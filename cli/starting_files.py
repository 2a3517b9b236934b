"""A starting file for each kind of piece: what was answered, and sizes that go with it."""

from collections.abc import Callable, Mapping
from math import ceil, cos, pi

from .answers import INCH, flats, is_metric, metres, section, size
from .lines import Row, part, quoted
from .questions import Answers
from .starting_site import head

LEAST_HOLLOW = 0.15
"""A roof below this width (m) is made solid: judgement."""

_NAMES = {
    "tower": "Garden tower",
    "well": "Wishing well",
    "post": "Garden post",
    "sign": "Yard sign",
    "arbor": "Garden arbor",
    "wheel": "Wheel of blades",
}
_TREATED = quoted("material", "southern pine, treated")


def starting_file(kind: str, answers: Answers) -> str:
    """Return the text of a starting file for a kind of piece. KeyError where there is no such."""
    return "\n".join((head(answers, _NAMES[kind]), *_PARTS[kind](answers)))


def _tower(answers: Answers) -> list[str]:
    metric, top = is_metric(answers["height"]), flats(answers, "top")
    deck = size(top + 6.0 * INCH, metric)
    return [
        _ring_foot(answers),
        _body("tower", "foot", answers),
        part(
            "gallery",
            "plate",
            [
                quoted("on", "tower"),
                _sides(answers),
                quoted("across", deck, "flat to flat"),
                *_sheet(answers, "thickness"),
            ],
            "lies flat: a deck, or only a lid",
        ),
        part(
            "roof",
            "cone",
            [
                quoted("on", "gallery"),
                _sides(answers),
                quoted("bottom", size(top + INCH, metric), "flat to flat, at the eaves"),
                quoted("height", size(0.8 * top, metric)),
                *_hollow(answers, top),
            ],
            "pointed; delete this part if yours has none",
        ),
    ]


def _well(answers: Answers) -> list[str]:
    metric, across = is_metric(answers["height"]), flats(answers, "bottom")
    floor, stick = 0.04 if metric else 1.5 * INCH, section("4x4")[0]
    wall = metres(answers["wall"]) if "wall" in answers else _sheet_thickness(answers["stock"])
    inside = min(across, flats(answers, "top")) - 2.0 * wall
    ring = size(inside - stick, metric)
    tie = section("2x4 flat")
    posts = metres(answers["eaves"]) - floor - tie[1]
    roof = size(1.2 * across, metric)
    ring_rows: list[Row] = [
        ("count", "2", "one right, one left"),
        quoted("ring", ring, "the circle through their middles"),
    ]
    return [
        part(
            "floor",
            "plate",
            [
                _sides(answers),
                quoted("across", size(across + 4.0 * INCH, metric), "flat to flat"),
                quoted("thickness", size(floor, metric)),
                _TREATED,
            ],
            "lies flat; it makes wall and posts one piece",
        ),
        _body("wall", "floor", answers),
        part(
            "posts",
            "solid",
            [
                quoted("on", "floor"),
                quoted("lumber", "4x4"),
                quoted("height", size(posts, metric)),
                *ring_rows,
                quoted("material", _wood(answers)),
            ],
        ),
        part(
            "ties",
            "box",
            [
                quoted("on", "posts", "the middle between them, at their tops"),
                quoted("length", size(tie[0], metric), "a 2x4 flat"),
                quoted("width", roof, "front to back, under the eaves"),
                quoted("height", size(tie[1], metric)),
                *ring_rows,
                quoted("material", _wood(answers)),
            ],
        ),
        part(
            "roof",
            "gable",
            [
                quoted("on", "ties"),
                quoted("length", size(1.4 * across, metric), "along the ridge, right to left"),
                quoted("width", roof, "eaves to eaves"),
                quoted("height", size(0.5 * across, metric)),
                *_sheet(answers, "thickness"),
            ],
            "pitched",
        ),
    ]


def _post(answers: Answers) -> list[str]:
    metric = is_metric(answers["height"])
    thick = section(answers["lumber"])[1]
    return [
        part(
            "foot",
            "plate",
            [
                ("sides", "4", ""),
                quoted("across", answers["foot"], "flat to flat"),
                quoted("thickness", size(thick, metric), f"{answers['lumber']}, side by side"),
                _TREATED,
            ],
            "lies flat",
        ),
        part(
            "post",
            "solid",
            [
                quoted("on", "foot", "stands on the middle of its top"),
                _sides(answers),
                *_ends(answers),
                quoted("height", answers["height"], "straight up"),
                quoted("material", answers["material"], "the others:  yardfast materials"),
            ],
        ),
        part(
            "finial",
            "ball",
            [
                quoted("on", "post"),
                quoted("across", size(0.8 * flats(answers, "top"), metric)),
                quoted("material", answers["material"]),
            ],
            "delete this part if yours has none",
        ),
    ]


def _sign(answers: Answers) -> list[str]:
    metric = is_metric(answers["width"])
    wide, thin = _stick(answers["legs"])
    across, high = section(answers["lumber"])
    lower, board = metres(answers["lower"]), metres(answers["height"])
    thick = metres(answers["wall"]) if "wall" in answers else _sheet_thickness(answers["stock"])
    back = 0.5 * (thin + thick)
    ring_rows: list[Row] = [
        ("count", "2", "one right, one left"),
        quoted("ring", size(metres(answers["width"]) - 2.0 * wide, metric), "middle to middle"),
    ]
    return [
        part(
            "feet",
            "box",
            [
                quoted("length", size(across, metric), f"{answers['lumber']}: to the right"),
                quoted("width", answers["foot"], "away from you"),
                quoted("height", size(high, metric)),
                *ring_rows,
                _TREATED,
            ],
        ),
        part(
            "legs",
            "box",
            [
                quoted("on", "feet", "stands on the middle of each top"),
                quoted("lumber", answers["legs"]),
                quoted("height", size(lower + board - high, metric)),
                *ring_rows,
                _TREATED,
            ],
        ),
        part(
            "board",
            "panel",
            [
                quoted("on", "feet"),
                (
                    "at",
                    f"['0 in', '-{size(back, metric, 64)}', '{size(lower - high, metric)}']",
                    "right, away from you, up",
                ),
                quoted("width", answers["width"]),
                quoted("height", answers["height"]),
                *_sheet(answers, "thickness"),
            ],
            "stands facing you",
        ),
    ]


def _arbor(answers: Answers) -> list[str]:
    metric = is_metric(answers["width"])
    half = metres(answers["depth"]) / 2.0
    across, high = section(answers["lumber"])
    ring_rows: list[Row] = [
        ("count", "2", "one right, one left"),
        quoted("ring", answers["width"], "middle to middle"),
    ]
    beam = size(metres(answers["width"]) + 16.0 * INCH, metric)
    thick, deep = section("2x6 on edge")
    parts = [
        part(
            "sills",
            "box",
            [
                quoted("length", size(across, metric), f"{answers['lumber']}: to the right"),
                quoted("width", answers["foot"], "away from you"),
                quoted("height", size(high, metric)),
                *ring_rows,
                _TREATED,
            ],
        )
    ]
    for name, sign in (("front", "-"), ("back", "")):
        at = f"['0 in', '{sign}{size(half, metric, 64)}', '0 in']"
        parts += [
            part(
                f"{name} posts",
                "box",
                [
                    quoted("on", "sills"),
                    ("at", at, "right, away from you, up"),
                    quoted("lumber", answers["posts"]),
                    quoted("height", answers["height"]),
                    *ring_rows,
                    quoted("material", "western redcedar"),
                ],
            ),
            part(
                f"{name} beam",
                "box",
                [
                    quoted("on", f"{name} posts", "the middle between them, at their tops"),
                    quoted("length", beam),
                    quoted("width", size(thick, metric), "a 2x6 on edge"),
                    quoted("height", size(deep, metric)),
                    quoted("material", "western redcedar"),
                ],
            ),
        ]
    if answers["lattice"] != "none":
        parts.append(_lattice(answers, ring_rows, metric))
    parts.append(
        part(
            "top",
            "plate",
            [
                quoted("on", "front beam"),
                ("at", f"['0 in', '{size(half, metric, 64)}', '0 in']", "over the middle again"),
                quoted("length", beam),
                quoted("width", size(2.0 * half + 12.0 * INCH, metric)),
                quoted("thickness", size(section("2x2")[1], metric), "2x2 slats"),
                ("solidity", "0.3", "a third of it is wood"),
                quoted("material", "western redcedar"),
            ],
            "lies flat",
        )
    )
    return parts


def _lattice(answers: Answers, ring_rows: list[Row], metric: bool) -> str:
    clear = metres(answers["depth"]) - _stick(answers["posts"])[1]
    rows = [
        quoted("on", "sills"),
        ("at", f"['0 in', '0 in', '{size(4.0 * INCH, metric)}']", "clear of the ground"),
        quoted("width", size(clear, metric, 64), "from post to post"),
        quoted("height", size(0.75 * metres(answers["height"]), metric)),
        quoted("thickness", size(0.5 * INCH, metric)),
        ("solidity", "0.5", "half wood, half air"),
        ("turn", "'90 deg'", "from side to side to front to back"),
        *ring_rows,
        quoted("material", "western redcedar"),
    ]
    if answers["lattice"] == "climbers":
        rows.insert(-1, ("climbers", "true", "checked as a solid board too"))
    return part("lattice", "panel", rows)


def _wheel(answers: Answers) -> list[str]:
    metric, span = is_metric(answers["height"]), metres(answers["across"]) / 2.0
    wide = 4.0 * INCH
    reach = _clear_of_body(answers, span) + INCH
    width = min(0.35, 2.6 / int(answers["blades"])) * span
    foot = dict(answers) | {
        "foot": size(_up(flats(answers, "bottom") + 6.0 * INCH, metric), metric),
        "lumber": "2x6 flat",
    }
    return [
        _ring_foot(foot),
        _body("tower", "foot", answers),
        part(
            "cap",
            "plate",
            [
                quoted("on", "tower"),
                _sides(answers),
                quoted("across", size(flats(answers, "top") + 2.0 * INCH, metric)),
                *_sheet(answers, "thickness"),
            ],
            "lies flat",
        ),
        part(
            "head",
            "box",
            [
                quoted("on", "cap"),
                quoted("length", size(wide, metric), "to the right"),
                quoted("width", size(2.0 * reach, metric), "away from you"),
                quoted("height", size(wide, metric)),
                *_sheet(answers, "wall"),
            ],
            "carries the axle, clear of the body",
        ),
        part(
            "wheel",
            "rotor",
            [
                quoted("on", "head"),
                (
                    "at",
                    f"['0 in', '-{size(reach + INCH, metric)}', '-{size(wide / 2.0, metric)}']",
                    "its hub: right, away, up",
                ),
                ("blades", answers["blades"], ""),
                quoted("span", size(span, metric, 64), "one blade, from the hub's middle"),
                quoted("root", size(width / 3.0, metric), "its width at the hub"),
                quoted("tip", size(width, metric), "its width at the tip"),
                quoted("thickness", "1.5 mm" if metric else "1/16 in"),
                quoted("facing", "180 deg", "to the front; or  yaws = true  with a tail"),
                quoted("material", "aluminium"),
            ],
        ),
        part(
            "axle",
            "weight",
            [
                quoted("on", "head"),
                ("at", f"['0 in', '-{size(reach, metric)}', '0 in']", ""),
                quoted("mass", "2 kg" if metric else "4 lb", "hub and axle: weight, no wind"),
            ],
        ),
    ]


_PARTS: Mapping[str, Callable[[Answers], list[str]]] = {
    "tower": _tower,
    "well": _well,
    "post": _post,
    "sign": _sign,
    "arbor": _arbor,
    "wheel": _wheel,
}


def _ring_foot(answers: Answers) -> str:
    return part(
        "foot",
        "frame",
        [
            _sides(answers),
            quoted("across", answers["foot"], "flat to flat"),
            quoted("lumber", answers["lumber"], "as sold; its actual size is taken"),
            _TREATED,
        ],
        "a ring of lumber",
    )


def _body(name: str, on: str, answers: Answers) -> str:
    return part(
        name,
        "shell",
        [
            quoted("on", on, "stands on the middle of its top"),
            _sides(answers),
            *_ends(answers),
            quoted("height", answers["height"], "straight up, not along the slope"),
            *_sheet(answers, "wall"),
        ],
        "hollow, open at both ends",
    )


def _sides(answers: Answers) -> Row:
    return "sides", answers["sides"], ""


def _ends(answers: Answers) -> list[Row]:
    says = {"": "flat to flat, outside", "_points": "corner to corner", "_side": "of one panel"}
    if answers["sides"] == "0":
        says[""] = "diameter, outside"
    over = answers["over"]
    return [
        quoted(f"bottom{over}", answers["bottom"], says[over]),
        quoted(f"top{over}", answers["top"]),
    ]


def _sheet(answers: Answers, key: str) -> list[Row]:
    """Return wall or thickness, and material."""
    material = quoted("material", answers["material"])
    if "stock" in answers:
        return [quoted("stock", answers["stock"], "as sold; its actual thickness is taken"), material]
    return [quoted(key, answers["wall"]), material]


def _hollow(answers: Answers, width: float) -> list[Row]:
    """Return a roof's wall and material; a small one is solid."""
    rows = _sheet(answers, "wall")
    return rows if width >= LEAST_HOLLOW else rows[-1:]


def _sheet_thickness(stock: str) -> float:
    from ..materials.stock import sheet_thicknesses  # noqa: PLC0415 - tables, only where asked

    return sheet_thicknesses()[stock]


def _stick(lumber: str) -> tuple[float, float]:
    """Return width and depth in m of a standing stick, its wide side to the front."""
    one, other = section(lumber)
    return max(one, other), min(one, other)


def _wood(answers: Answers) -> str:
    """Return the wall's material where it is lumber, else a common one for posts."""
    sheets = ("plywood", "OSB", "MDO")
    return "southern pine" if answers["material"].endswith(sheets) else answers["material"]


def _clear_of_body(answers: Answers, span: float) -> float:
    """Return how far in m from its middle the body reaches at the height of the blades' tips."""
    bottom, top = flats(answers, "bottom"), flats(answers, "top")
    down = min(1.0, span / metres(answers["height"]))
    sides = int(answers["sides"])
    corner = cos(pi / sides) if sides else 1.0
    return max(top, top + (bottom - top) * down) / 2.0 / corner


def _up(value: float, metric: bool) -> float:
    step = 0.01 if metric else INCH
    return step * ceil(value / step - 1.0e-9)
