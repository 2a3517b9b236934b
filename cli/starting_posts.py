"""Starting files of pieces that stand on posts: well, sign, arbor."""

from ..units import INCH
from .answers import flats, is_metric, metres, section, size
from .lines import Row, part, quoted
from .questions import Answers
from .starting_rows import TREATED, at, body, sheet, sides, stick, thickness, two_round


def well(answers: Answers) -> list[str]:
    """Return the parts of a starting well."""
    metric, across = is_metric(answers["height"]), flats(answers, "bottom")
    floor, post = 0.04 if metric else 1.5 * INCH, section("4x4")[0]
    wall = thickness(answers)
    inside = min(across, flats(answers, "top")) - 2.0 * wall
    ring = size(inside - post, metric)
    tie = section("2x4 flat")
    posts = metres(answers["eaves"]) - floor - tie[1]
    roof = size(1.2 * across, metric)
    pair = two_round(ring)
    return [
        part(
            "floor",
            "plate",
            [
                sides(answers),
                quoted("across", size(across + 4.0 * INCH, metric), "flat to flat"),
                quoted("thickness", size(floor, metric)),
                TREATED,
            ],
            "lies flat; it makes wall and posts one piece",
        ),
        body("wall", "floor", answers),
        part(
            "posts",
            "solid",
            [
                quoted("on", "floor"),
                quoted("lumber", "4x4"),
                quoted("height", size(posts, metric)),
                *pair,
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
                *pair,
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
                *sheet(answers, "thickness"),
            ],
            "pitched",
        ),
    ]


def sign(answers: Answers) -> list[str]:
    """Return the parts of a starting sign."""
    metric = is_metric(answers["width"])
    wide, thin = stick(answers["legs"])
    across, high = section(answers["lumber"])
    lower, board = metres(answers["lower"]), metres(answers["height"])
    thick = thickness(answers)
    back = 0.5 * (thin + thick)
    pair = two_round(size(metres(answers["width"]) - 2.0 * wide, metric))
    return [
        part(
            "feet",
            "box",
            [
                quoted("length", size(across, metric), f"{answers['lumber']}: to the right"),
                quoted("width", answers["foot"], "away from you"),
                quoted("height", size(high, metric)),
                *pair,
                TREATED,
            ],
        ),
        part(
            "legs",
            "box",
            [
                quoted("on", "feet", "stands on the middle of each top"),
                quoted("lumber", answers["legs"]),
                quoted("height", size(lower + board - high, metric)),
                *pair,
                TREATED,
            ],
        ),
        part(
            "board",
            "panel",
            [
                quoted("on", "feet"),
                at(metric, -back, lower - high, "right, away from you, up"),
                quoted("width", answers["width"]),
                quoted("height", answers["height"]),
                *sheet(answers, "thickness"),
            ],
            "stands facing you",
        ),
    ]


def arbor(answers: Answers) -> list[str]:
    """Return the parts of a starting arbor."""
    metric = is_metric(answers["width"])
    half = metres(answers["depth"]) / 2.0
    across, high = section(answers["lumber"])
    pair = two_round(answers["width"])
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
                *pair,
                TREATED,
            ],
        )
    ]
    for name, away in (("front", -half), ("back", half)):
        parts += [
            part(
                f"{name} posts",
                "box",
                [
                    quoted("on", "sills"),
                    at(metric, away, 0.0, "right, away from you, up"),
                    quoted("lumber", answers["posts"]),
                    quoted("height", answers["height"]),
                    *pair,
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
        parts.append(_lattice(answers, pair, metric))
    parts.append(
        part(
            "top",
            "plate",
            [
                quoted("on", "front beam"),
                at(metric, half, 0.0, "over the middle again"),
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


def _lattice(answers: Answers, pair: list[Row], metric: bool) -> str:
    clear = metres(answers["depth"]) - stick(answers["posts"])[1]
    rows = [
        quoted("on", "sills"),
        at(metric, 0.0, 4.0 * INCH, "clear of the ground"),
        quoted("width", size(clear, metric, 64), "from post to post"),
        quoted("height", size(0.75 * metres(answers["height"]), metric)),
        quoted("thickness", size(0.5 * INCH, metric)),
        ("solidity", "0.5", "half wood, half air"),
        ("turn", "'90 deg'", "from side to side to front to back"),
        *pair,
        quoted("material", "western redcedar"),
    ]
    if answers["lattice"] == "climbers":
        rows.insert(-1, ("climbers", "true", "checked as a solid board too"))
    return part("lattice", "panel", rows)


def _wood(answers: Answers) -> str:
    """Return the wall's material where it is lumber, else a common one for posts."""
    sheets = ("plywood", "OSB", "MDO")
    return "southern pine" if answers["material"].endswith(sheets) else answers["material"]
