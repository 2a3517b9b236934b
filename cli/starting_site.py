"""The head of a starting file: what the design is called, and its site."""

from ..loads.asce7.hill import greatest_topographic_factor
from ..loads.site_table import EXPOSURES
from .answers import is_metric
from .asked_site import WIND_OF
from .lines import block
from .questions import Answers

INTRODUCTION = """\
# A dimension is text with its unit, between single quote marks, as on a tape or a drawing:
#   '36 in'   '4 ft 6 in'   '1 1/2 in'   '910 mm'        counts are plain numbers: 8
# What stands behind a # is for people only. One file holds one piece.
"""

_WIND_SAYS = {
    "advisory": "a wind advisory starts here; what you ask of it",
    "warning": "a high-wind warning starts here; what you ask of it",
    "code": "the building department's number",
    "record": "the greatest of the record",
}


def head(answers: Answers, name: str) -> str:
    """Return introduction, ``[design]`` and ``[site]`` for the answers."""
    metric = any(is_metric(answers[key]) for key in ("height", "width") if key in answers)
    design = block(
        "[design]",
        ("name", f"'{name}'", "what you call it"),
        (
            "units",
            "'metric'" if metric else "'imperial'",
            "how results are shown: 'imperial' or 'metric'",
        ),
        ("# weighed", "'.. kg'" if metric else "'.. lb'", "what a scale shows, once it is built"),
    )
    return "\n".join((INTRODUCTION, design, _site(answers)))


def _site(answers: Answers) -> str:
    code = answers["asked"] == "code"
    method = answers["method"] if code else "forecast"
    rows = [
        (
            "method",
            f"'{method}'",
            "the standard"
            if code
            else "wind is a 3-second gust as forecasts and warnings state it",
        ),
        ("wind", f"'{_wind(answers)}'", _WIND_SAYS[answers["asked"]]),
    ]
    if answers.get("wind_kind"):
        rows.append(("wind_kind", f"'{answers['wind_kind']}'", "'nominal' is of a map before 2010"))
    if answers.get("source"):
        rows.append(("wind_source", f"'{answers['source']}'", ""))
    if answers.get("gusts"):
        rows.append(("gusts", answers["gusts"], "years it takes to come again, and the gust"))
    if code:
        period = answers.get("period")
        rows.append(
            ("return_period", period, "years")
            if period
            else ("# return_period", "..", "years: ask with the number")
        )
    rows += _exposure(answers)
    rows += _hill(answers)
    rows.append(("ground", f"'{answers['ground']}'", _ground_says(answers["ground"])))
    rows.append(("# people", "'children'", "uncomment where they may lean on it or climb it"))
    return block("[site]", *rows)


def _wind(answers: Answers) -> str:
    return WIND_OF.get(answers["asked"]) or answers["wind"]


def _exposure(answers: Answers) -> list[tuple[str, str, str]]:
    if answers["around"] != "sold":
        others = [f"'{word}'" for word in ("open", "houses and trees", "shore")]
        others.remove(f"'{answers['around']}'")
        return [("exposure", f"'{answers['around']}'", f"or {' or '.join(others)}")]
    return [
        ("exposure", "'shore'", "you sell it: the windiest of the three; try each in turn"),
        ("# exposure", "'open'", "open field or road"),
        ("# exposure", "'houses and trees'", "where they stand all round for 1,500 ft"),
    ]


def _hill(answers: Answers) -> list[tuple[str, str, str]]:
    landform = answers.get("hill", "no")
    if landform == "no":
        return []
    factor = greatest_topographic_factor(landform, EXPOSURES[answers["around"]])
    return [
        (
            "topographic",
            f"{factor:.2f}",
            f"Kzt on the crest of the steepest {landform}; ask for yours",
        )
    ]


def _ground_says(ground: str) -> str:
    if ground == "wet lawn":
        return "the softer lawn; 'firm lawn' where a heel leaves no mark"
    return "the others:  yardfast grounds"
