"""Starting files of pieces with a body on a foot: tower, post, wheel."""

from math import cos, pi

from ..units import INCH
from .answers import flats, is_metric, metres, section, size
from .lines import Row, part, quoted
from .questions import Answers
from .starting_rows import TREATED, at, body, ends, ring_foot, rounded_up, sheet, sides

LEAST_HOLLOW = 0.15
"""A roof below this width (m) is made solid: judgement."""


def tower(answers: Answers) -> list[str]:
    """Return the parts of a starting tower."""
    metric, top = is_metric(answers["height"]), flats(answers, "top")
    deck = size(top + 6.0 * INCH, metric)
    return [
        ring_foot(answers),
        body("tower", "foot", answers),
        part(
            "gallery",
            "plate",
            [
                quoted("on", "tower"),
                sides(answers),
                quoted("across", deck, "flat to flat"),
                *sheet(answers, "thickness"),
            ],
            "lies flat: a deck, or only a lid",
        ),
        part(
            "roof",
            "cone",
            [
                quoted("on", "gallery"),
                sides(answers),
                quoted("bottom", size(top + INCH, metric), "flat to flat, at the eaves"),
                quoted("height", size(0.8 * top, metric)),
                *_hollow(answers, top),
            ],
            "pointed; delete this part if yours has none",
        ),
    ]


def post(answers: Answers) -> list[str]:
    """Return the parts of a starting post."""
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
                TREATED,
            ],
            "lies flat",
        ),
        part(
            "post",
            "solid",
            [
                quoted("on", "foot", "stands on the middle of its top"),
                sides(answers),
                *ends(answers),
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


def wheel(answers: Answers) -> list[str]:
    """Return the parts of a starting wheel."""
    metric, span = is_metric(answers["height"]), metres(answers["across"]) / 2.0
    wide = 0.1 if metric else 4.0 * INCH
    reach = rounded_up(_clear_of_body(answers, span) + INCH, metric)
    width = min(0.35, 2.6 / int(answers["blades"])) * span
    foot = dict(answers) | {
        "foot": size(rounded_up(flats(answers, "bottom") + 6.0 * INCH, metric), metric),
        "lumber": "2x6 flat",
    }
    return [
        ring_foot(foot),
        body("tower", "foot", answers),
        part(
            "cap",
            "plate",
            [
                quoted("on", "tower"),
                sides(answers),
                quoted("across", size(flats(answers, "top") + 2.0 * INCH, metric)),
                *sheet(answers, "thickness"),
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
                *sheet(answers, "wall"),
            ],
            "carries the axle, clear of the body",
        ),
        part(
            "wheel",
            "rotor",
            [
                quoted("on", "head"),
                at(metric, -reach - INCH, -wide / 2.0, "its hub: right, away from you, up"),
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
                at(metric, -reach, -wide / 2.0),
                quoted("mass", "2 kg" if metric else "4 lb", "hub and axle: weight, no wind"),
            ],
        ),
    ]


def _hollow(answers: Answers, width: float) -> list[Row]:
    """Return a roof's wall and material; a small one is solid."""
    rows = sheet(answers, "wall")
    return rows if width >= LEAST_HOLLOW else rows[-1:]


def _clear_of_body(answers: Answers, span: float) -> float:
    """Return how far in m from its middle the body reaches at the height of the blades' tips."""
    bottom, top = flats(answers, "bottom"), flats(answers, "top")
    down = min(1.0, span / metres(answers["height"]))
    sides = int(answers["sides"])
    corner = cos(pi / sides) if sides else 1.0
    return max(top, top + (bottom - top) * down) / 2.0 / corner
