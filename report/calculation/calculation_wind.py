"""The steps of the wind: its pressure, its forces, and the gusts to act at."""

from math import degrees, isfinite, sqrt
from typing import Any

from ...checks.examination import MINIMUM, Examination
from ...checks.limits import RESERVE
from ...checks.sides import met_by
from ...checks.stated.worked import density, part_winds, tipping_at
from ...loads.asce7 import velocity_pressure as asce7
from ...loads.asce7.standard import ASCE7
from ...loads.en1991 import peak_pressure
from ...loads.en1991.standard import basic_of
from ..wording.words import side_said
from .calculation_text import (
    calculation_section,
    calculation_table,
    four_figures,
    paragraph,
    step,
)

_FORCES = (
    "ASCE/SEI 7-22 29.4; Figs. 29.3-1, 29.4-1 to 29.4-3",
    "EN 1991-1-4:2005 Eq. 5.3; 7.4 and 7.6 to 7.13; Kd and G are 1",
)


def pressure(examination: Examination) -> dict[str, Any]:
    """Return the velocity pressure at the top, by the site's method."""
    site, wind = examination.site, examination.wind
    height = examination.structure.height
    if site.terrain is not None:
        return _peak_pressure(examination)
    if site.method in ASCE7.names:
        edition = site.method.removeprefix("ASCE ")
        Kz = float(asce7.exposure_coefficient(height, site.exposure or "C", edition))
        values = {
            "Kz": Kz,
            "Kzt": site.topographic or 1.0,
            "Ke": float(asce7.elevation_factor(site.elevation or 0.0)),
            "V": site.wind,
            "q": wind.pressure,
        }
        low, high = float(wind.gust_factor.min()), float(wind.gust_factor.max())
        G = (
            four_figures(low)
            if four_figures(low) == four_figures(high)
            else f"{four_figures(low)} to {four_figures(high)}"
        )
        return calculation_section(
            "Wind pressure",
            step(
                "code pressure",
                "At the top of the piece, without Kd",
                values,
                f"ASCE/SEI {edition} Eq. 26.10-1; Kz by Table 26.10-1",
            ),
            paragraph(f"Gust effect factor G {G}, computed for a rigid structure (26.11.4)."),
        )
    rho = density(examination)
    speed = sqrt(2.0 * wind.pressure / rho)
    ratio = examination.limits.ratio
    at_piece = None
    if site.method == "forecast":
        at_piece = step(
            "gust at the piece",
            "From the forecast gust, 10 m up over open country, to the piece",
            {"Vf": site.wind, "K": ratio**2, "V": speed},
            "ratio of two pressures by ASCE/SEI 7-22 Eq. 26.10-1",
        )
    return calculation_section(
        "Wind pressure",
        at_piece,
        step(
            "gust pressure",
            "All over the piece; G and Kd are 1, since the gust itself is given",
            {"rho": rho, "V": speed, "q": wind.pressure},
            "Bernoulli",
        ),
    )


def _peak_pressure(examination: Examination) -> dict[str, Any]:
    site, height = examination.site, examination.structure.height
    terrain = site.terrain or peak_pressure.OPEN_TERRAIN
    c_o = site.orography or 1.0
    turbulence = peak_pressure.turbulence_intensity(height, terrain, c_o, site.turbulence_factor)
    values = {
        "Iv": float(turbulence),
        "rho": density(examination),
        "cr": float(peak_pressure.roughness_factor(height, terrain)),
        "co": c_o,
        "V": basic_of(site),
        "q": examination.wind.pressure,
    }
    return calculation_section(
        "Wind pressure",
        step(
            "peak pressure",
            f"At the top of the piece, terrain {terrain}",
            values,
            "EN 1991-1-4:2005 Eqs. 4.3 to 4.8",
        ),
        paragraph("The structural factor is 1 (6.2), and the direction factor is in the velocity."),
    )


def forces(examination: Examination) -> dict[str, Any]:
    """Return what each part takes of the wind in the governing direction."""
    check = examination.overturning
    title = "Wind on each part"
    on = side_said(met_by(examination, check.direction_deg or 0.0))
    where = f"wind {on}, from {four_figures(check.direction_deg or 0.0)} deg"
    if check.case == MINIMUM:
        face, least = examination.exposed.silhouette, asce7.minimum_pressure()
        d = int(abs(examination.wind.azimuths - (check.direction_deg or 0.0)).argmin())
        area = float(face.area[d])
        return calculation_section(
            title,
            step(
                "least wind",
                f"The least wind of the standard decides, on the whole outline, {where}",
                {"p": least, "A": area, "H": least * area},
                "ASCE/SEI 7 29.7",
            ),
        )
    parts = examination.design.parts
    found = part_winds(examination)
    rows = [
        [
            parts[one.part].name,
            one.kind,
            four_figures(one.area),
            four_figures(one.product / one.area) if one.area > 0.0 else "-",
            four_figures(one.pressure),
            four_figures(one.directionality),
            four_figures(one.force),
            four_figures(one.height),
            four_figures(one.force * one.height),
        ]
        for one in found
        if one.force > 0.0 or one.area > 0.0
    ]
    heads = ["Part", "wind as on", "A m²", "C", "q Pa", "Kd", "F N", "z m", "F z N m"]
    G = float(examination.wind.gust_factor.max())
    words = f"In the direction that decides tipping: {where}. A is what is seen of all copies."
    return calculation_section(
        title,
        step("force", words, {"G": G}, _FORCES[examination.site.terrain is not None]),
        calculation_table(heads, rows),
        step(
            "sum of forces",
            "All together",
            {
                "H": sum(one.force for one in found),
                "M": sum(one.force * one.height for one in found),
            },
        ),
    )


def gusts(examination: Examination) -> dict[str, Any]:
    """Return the gusts at which it starts to tip and slide, and the one to act at."""
    limits = examination.limits
    found = tipping_at(examination) if examination.posts is None else None
    tips = None
    if found is not None and limits.tipping is not None and limits.loose_tips is None:
        hold, one, q = found
        tips = step(
            "tipping gust",
            "Starts to tip: typical weight, no factors, the worst direction",
            {
                "hold": hold,
                "one": one,
                "q": q,
                "rho": density(examination),
                "V": limits.tipping,
            },
        )
    elif limits.loose_tips is not None:
        tips = paragraph(
            f"The loose {limits.loose_tips} tips before the whole does, at "
            f"{_or_none(limits.tipping)} m/s at the piece."
        )
    act = None
    if isfinite(limits.act_at_piece):
        act = step(
            "act at",
            "To act at: the least of both low ends, and of both gusts over the root of the reserve",
            {
                "Vtl": limits.tipping_low or limits.act_at_piece,
                "Vsl": limits.sliding_low or limits.act_at_piece,
                "Vt": limits.tipping or limits.act_at_piece * sqrt(RESERVE),
                "Vs": limits.sliding or limits.act_at_piece * sqrt(RESERVE),
                "r": RESERVE,
                "K": limits.ratio**2,
                "V": limits.act_at_piece / limits.ratio,
            },
        )
    return calculation_section(
        "The gusts that it is told by",
        tips,
        step(
            "forecast gust",
            "As forecasts state it",
            {
                "V": limits.tipping,
                "K": limits.ratio**2,
                "Vf": limits.forecast_tipping,
            },
        )
        if limits.tipping is not None and limits.forecast_tipping is not None
        else None,
        paragraph(
            f"Range of tipping {_or_none(limits.tipping_low)} to {_or_none(limits.tipping_high)} "
            f"m/s (light to heavy weight, coefficients 15 % off); slides at "
            f"{_or_none(limits.sliding)} m/s; all at the piece, over 150 m/s not told."
        ),
        act,
        paragraph(
            f"A level push of {four_figures(limits.push)} N at "
            f"{four_figures(limits.push_height)} m tips it "
            f"without wind. Wind from {four_figures(limits.tipping_azimuth)} deg tips it first; "
            "slope "
            f"{four_figures(degrees(examination.standing.slope))} deg."
        ),
    )


def _or_none(gust: float | None) -> str:
    return "none below 150" if gust is None else four_figures(gust)
