"""The odds as a JSON Schema: gusts in m/s, chances and shares from 0 to 1, all finite or null."""

from ...checks.spread import INPUTS
from ..record import A_FLAG, A_TEXT, MAYBE_NUMBER, MAYBE_TEXT, Schema, list_of, object_of
from ..told.odds_words import NOT_INCLUDED, ODDS_FORMAT
from .design_schema import SCHEMA_DRAFT

_CHANCE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
_MAYBE_CHANCE: Schema = {"type": ["number", "null"], "minimum": 0, "maximum": 1}
_ABOVE_NOTHING: Schema = {"type": "number", "exclusiveMinimum": 0}
_NOT_NEGATIVE: Schema = {"type": "number", "minimum": 0}
_MAYBE_GUST: Schema = {"type": ["number", "null"], "minimum": 0}
_COUNT: Schema = {"type": "integer", "minimum": 1}
_INPUT: Schema = {"enum": list(INPUTS)}


def odds_schema() -> Schema:
    """Return the schema of what ``odds --format json`` prints."""
    gusts = object_of(p5=_MAYBE_GUST, p50=_MAYBE_GUST, p95=_MAYBE_GUST)
    chances = object_of(tips=_CHANCE, slides=_CHANCE)
    chances["properties"]["joint"] = _CHANCE  # of a piece with joints alone
    whole = object_of(
        format={"const": ODDS_FORMAT},
        name=A_TEXT,
        file=A_TEXT,
        tipping_forecast_gust_m_s=gusts,
        sliding_forecast_gust_m_s=gusts,
        joint_forecast_gust_m_s=gusts,
        first_joint=MAYBE_TEXT,
        asked_forecast_gust_m_s=_ABOVE_NOTHING,
        probability_at_asked_wind=_CHANCE,
        probabilities=chances,
        per_year=_MAYBE_CHANCE,
        over_years=_MAYBE_CHANCE,
        years=_COUNT,
        least_that_is_told=A_FLAG,
        standard_error=_NOT_NEGATIVE,
        standard_error_per_year=MAYBE_NUMBER,
        standard_error_over_years=MAYBE_NUMBER,
        sensitivity=list_of(object_of(input=_INPUT, share=_CHANCE)),
        inputs=list_of(_varies()),
        not_included=list_of({"enum": list(NOT_INCLUDED)}),
        samples=_COUNT,
        seed={"type": "integer", "minimum": 0},
    )
    return {"$schema": SCHEMA_DRAFT, "title": f"Yardfast odds, format {ODDS_FORMAT}", **whole}


def _varies() -> Schema:
    return object_of(
        name=_INPUT,
        of=MAYBE_TEXT,
        shape=A_TEXT,
        spread=_NOT_NEGATIVE,
        mean=_ABOVE_NOTHING,
        low=_NOT_NEGATIVE,
        high=MAYBE_NUMBER,
        source=A_TEXT,
        confidence=MAYBE_TEXT,
    )
