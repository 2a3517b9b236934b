"""The odds as a JSON object and as its schema: gusts in m/s, shares from 0 to 1, finite or null."""

from typing import Any

from ...checks.odds.odds import Gusts, Odds
from ...checks.spread import INPUTS
from ...design.model import Design
from ..record import (
    NUMBER,
    ObjectOf,
    Schema,
    inner_object,
    inner_objects,
    list_of,
    maybe_number,
    maybe_text,
    object_of,
    one_value,
    text,
    true_or_false,
)
from ..told.odds_words import NOT_INCLUDED
from ..wording.faults import clean
from .design_schema import SCHEMA_DRAFT

ODDS_FORMAT = 1
"""The format of ``odds --format json``: within it keys are added and none is renamed."""

_CHANCE: Schema = {**NUMBER, "minimum": 0, "maximum": 1}
_MAYBE_CHANCE: Schema = {"type": ["number", "null"], "minimum": 0, "maximum": 1}
_ABOVE_NOTHING: Schema = {**NUMBER, "exclusiveMinimum": 0}
_NOT_NEGATIVE: Schema = {**NUMBER, "minimum": 0}
_MAYBE_GUST: Schema = {"type": ["number", "null"], "minimum": 0}
_COUNT: Schema = {"type": "integer", "minimum": 1}
_INPUT: Schema = {"enum": list(INPUTS)}

_GUSTS = ObjectOf(
    p5=one_value(_MAYBE_GUST, "p5"),
    p50=one_value(_MAYBE_GUST, "p50"),
    p95=one_value(_MAYBE_GUST, "p95"),
)
_VARIES = ObjectOf(
    name=one_value(_INPUT, lambda row: row[0]),
    of=maybe_text(lambda row: row[1]),
    shape=text(lambda row: row[2].shape),
    spread=one_value(_NOT_NEGATIVE, lambda row: row[2].spread),
    mean=one_value(_ABOVE_NOTHING, lambda row: row[2].mean),
    low=one_value(_NOT_NEGATIVE, lambda row: row[2].low),
    high=maybe_number(lambda row: row[2].high),
    source=text(lambda row: row[2].source),
    confidence=maybe_text(lambda row: row[2].confidence),
)
_SHARE = ObjectOf(
    input=one_value(_INPUT, lambda row: row[0]), share=one_value(_CHANCE, lambda row: row[1])
)
_CHANCES: Schema = object_of(tips=_CHANCE, slides=_CHANCE)
_CHANCES["properties"]["joint"] = _CHANCE  # of a piece with joints alone


def _chances(odds: Odds) -> dict[str, float]:
    names = ("tips", "slides") if odds.joint is None else ("tips", "slides", "joint")
    return {name: odds.chances[name] for name in names}


_ODDS = ObjectOf(
    tipping_forecast_gust_m_s=inner_object(_GUSTS, "tipping"),
    sliding_forecast_gust_m_s=inner_object(_GUSTS, "sliding"),
    joint_forecast_gust_m_s=inner_object(
        _GUSTS, lambda odds: odds.joint or Gusts(None, None, None)
    ),
    first_joint=maybe_text("first_joint"),
    asked_forecast_gust_m_s=one_value(_ABOVE_NOTHING, "asked"),
    probability_at_asked_wind=one_value(_CHANCE, lambda odds: odds.chances["any"]),
    probabilities=one_value(_CHANCES, _chances),
    per_year=one_value(_MAYBE_CHANCE, "per_year"),
    over_years=one_value(_MAYBE_CHANCE, "over_years"),
    years=one_value(_COUNT, "years"),
    least_that_is_told=true_or_false("bounded"),
    standard_error=one_value(_NOT_NEGATIVE, lambda odds: odds.errors["asked"]),
    standard_error_per_year=maybe_number(lambda odds: odds.errors["year"]),
    standard_error_over_years=maybe_number(lambda odds: odds.errors["years"]),
    sensitivity=inner_objects(_SHARE, "shares"),
    inputs=inner_objects(_VARIES, "varying"),
    not_included=one_value(list_of({"enum": list(NOT_INCLUDED)}), lambda _: list(NOT_INCLUDED)),
    samples=one_value(_COUNT, "samples"),
    seed=one_value({"type": "integer", "minimum": 0}, "seed"),
)
_OF_DESIGN = ObjectOf(
    format=one_value({"const": ODDS_FORMAT}, lambda _: ODDS_FORMAT),
    name=text(lambda design: clean(design.name)),
    file=text(lambda design: clean(design.file)),
)


def odds_object(design: Design, odds: Odds) -> dict[str, Any]:
    """Return the odds of a design in SI for programs."""
    return {**_OF_DESIGN.object(design), **_ODDS.object(odds)}


def odds_schema() -> Schema:
    """Return the schema of what ``odds --format json`` prints."""
    whole = ObjectOf({**_OF_DESIGN, **_ODDS}).schema
    return {"$schema": SCHEMA_DRAFT, "title": f"Yardfast odds, format {ODDS_FORMAT}", **whole}
