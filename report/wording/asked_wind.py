"""The wind that was asked for, in words: where it blows, by which code, with what to spare."""

from math import degrees

from ...loads.gust.standard import AT_PIECE
from ...loads.methods import standard_of
from ...loads.wind.site import OPEN_COUNTRY, Site
from ..messages.terms import TERMS_SAID
from .amounts import Amounts


def around(site: Site) -> str:
    """Return what lies around it, in a few words."""
    return TERMS_SAID["surroundings"][site.terrain or site.exposure or OPEN_COUNTRY]


def asked_wind(site: Site, amounts: Amounts) -> str:
    """Return the wind that was asked for, a hill and a slope with it, in a few words."""
    wind = amounts.gust(site.wind, "near")
    if site.method == AT_PIECE:
        said = [f"{wind} at the piece"]
    elif site.terrain is not None:
        said = [f"{wind} ten-minute mean", f"{around(site)} (terrain {site.terrain})"]
    else:
        said = [wind, around(site)]
    hill = site.topographic or site.orography
    if hill is not None and abs(hill - 1.0) > 1.0e-9:
        said.append(f"on a hill (x{hill:.2f})")
    if site.slope:
        said.append(f"ground sloping {degrees(site.slope):.3g} deg")
    return ", ".join(said)


def code_wind(site: Site, amounts: Amounts) -> str | None:
    """Return the sentence that names a code's wind as it was given; None for plain gusts."""
    if not standard_of(site.method).is_code:
        return None
    source = f"source: {site.wind_source}" if site.wind_source else "no source given"
    wind = amounts.gust(site.wind, "near")
    if site.terrain is not None:
        means = standard_of(site.method).speed_means(site.method)
        return f"Code wind: {site.method}, {wind}, {means}; {source}; {site.basis} basis."
    years = site.return_period
    period = f"return period {years:,.0f} years" if years else "no return period given"
    kind = "from a nominal speed" if site.wind_kind == "nominal" else "ultimate"
    return (
        f"Code wind: {site.method}, {wind} {kind} 3-second gust; "
        f"{source}; {period}; {site.basis} basis."
    )


def mapped(site: Site) -> str:
    """Return what a code's map states, in a few words."""
    return "mean wind of the map" if site.terrain is not None else "map wind"


def to_spare(site: Site, *, planted: bool) -> str:
    """Return the reserve that was asked for, in words."""
    if planted and site.basis != "strength":
        return "within what the ground may be asked"
    if site.basis != "service":
        return "which just does not tip it"
    if abs(site.safety - 1.5) < 1.0e-9:
        return "half again to spare"
    if abs(site.safety - 1.0) < 1.0e-9:
        return "nothing to spare"
    return f"{site.safety:g} times what is needed" if site.safety > 1.0 else "less than needed"
