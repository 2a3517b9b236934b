"""The wind that was asked for, in words: where it blows, by which code, with what to spare."""

from math import degrees

from ..checks.examination import Examination
from .amounts import Amounts

SURROUNDINGS = {"B": "houses and trees", "C": "open ground", "D": "shore"}


def asked(examination: Examination, amounts: Amounts) -> str:
    """Return the wind that was asked for, a hill and a slope with it, in a few words."""
    site = examination.site
    wind = amounts.gust(site.wind, "near")
    said = [f"{wind} at the piece"] if site.method == "gust" else [wind, SURROUNDINGS["C"]]
    if site.method != "gust" and site.exposure is not None:
        said[1] = SURROUNDINGS[site.exposure]
    if site.topographic is not None and abs(site.topographic - 1.0) > 1.0e-9:
        said.append(f"on a hill (x{site.topographic:.2f})")
    if site.slope:
        said.append(f"ground sloping {degrees(site.slope):.3g} deg")
    return ", ".join(said)


def code_wind(examination: Examination, amounts: Amounts) -> str | None:
    """Return the sentence that names a code's wind as it was given; None for plain gusts."""
    site = examination.site
    if not site.method.startswith("ASCE"):
        return None
    source = f"source: {site.wind_source}" if site.wind_source else "no source given"
    years = site.return_period
    period = f"return period {years:,.0f} years" if years else "no return period given"
    kind = "from a nominal speed" if site.wind_kind == "nominal" else "ultimate"
    return (
        f"Code wind: {site.method}, {amounts.gust(site.wind, 'near')} {kind} 3-second gust; "
        f"{source}; {period}; {site.basis} basis."
    )


def wind_words(examination: Examination, amounts: Amounts) -> str:
    """Return the asked wind as it stands in a sentence: ``58 mph forecast gust you asked``."""
    wind = amounts.gust(examination.site.wind, "near")
    match examination.site.method:
        case "forecast":
            return f"{wind} forecast gust you asked"
        case "gust":
            return f"{wind} gust at the piece that you asked"
        case method:
            return f"{wind} map wind ({method})"


def to_spare(examination: Examination) -> str:
    """Return the reserve that was asked for, in words."""
    site = examination.site
    if examination.posts is not None and site.basis != "strength":
        return "within what the ground may be asked"
    if site.basis != "service":
        return "which just does not tip it"
    if abs(site.safety - 1.5) < 1.0e-9:
        return "half again to spare"
    if abs(site.safety - 1.0) < 1.0e-9:
        return "nothing to spare"
    return f"{site.safety:g} times what is needed" if site.safety > 1.0 else "less than needed"
