"""The ``[site]`` table as people write it, and the Site that it becomes."""

from itertools import pairwise

from ..design.bounds import AIR, ANNEX, ELEVATION, OROGRAPHY, SAFETY, TOPOGRAPHIC, WIND, YEARS
from ..design.reader.row import Row
from ..design.reader.schema import Key, TableSpec
from ..materials import grounds
from .combinations import SAFETY_DEFAULT, TIMBER
from .en1991.peak_pressure import terrains
from .en1991.standard import ANNEX_KEYS, EN1991
from .methods import methods, standard_of, timber_with
from .wind.exposure import EXPOSURES
from .wind.gust_record import read_record
from .wind.site import Site

_TREES = "'houses and trees', if they stand all round for 1,500 ft; else 'open'"
_METHOD_WORDS = {
    **dict.fromkeys(("en 1991", "eurocode", "eurocode 1", "ec1"), "'EN 1991-1-4'"),
    **dict.fromkeys(
        ("asce", "asce 7"), "'ASCE 7-22' or 'ASCE 7-16', as your building code names it"
    ),
    **dict.fromkeys(
        ("asce 7-10", "asce 7-05"), "its wind speeds are of another map: not understood"
    ),
    **dict.fromkeys(("warning", "weather", "forecast gust"), "'forecast'"),
    **dict.fromkeys(("asce7 22", "asce 7 22", "asce7/22", "7 22", "asce 722"), "'ASCE 7-22'"),
    **dict.fromkeys(("asce7 16", "asce 7 16", "asce7/16", "7 16", "asce 716"), "'ASCE 7-16'"),
    "beaufort": "Beaufort states a mean wind: take the gust of a forecast, and 'forecast'",
}
_EXPOSURE_WORDS = {
    **{f"exposure {letter}": f"'{letter.upper()}'" for letter in "bcd"},
    **dict.fromkeys(("suburb", "suburban", "town", "city", "houses", "trees", "woods"), _TREES),
    **dict.fromkeys(
        (
            "field",
            "fields",
            "rural",
            "country",
            "meadow",
            "open country",
            "open field",
            "open fields",
            "prairie",
            "farmland",
        ),
        "'open'",
    ),
    **dict.fromkeys(("water", "lake", "sea", "coast", "beach", "open water"), "'shore'"),
    **dict.fromkeys(("sheltered", "garden", "yard", "backyard", "back yard", "a"), _TREES),
}
_GROUND_WORDS = {
    **dict.fromkeys(
        ("lawn", "grass", "turf", "yard", "garden", "sod"),
        "'wet lawn' if you do not know; 'firm lawn' where a heel leaves no mark",
    ),
    **dict.fromkeys(("wet grass", "soft lawn", "soggy lawn"), "'wet lawn'"),
    **dict.fromkeys(("dry lawn", "hard lawn"), "'firm lawn'"),
    **dict.fromkeys(("soil", "dirt", "earth", "garden bed"), "'soft clay', if you do not know"),
    "clay": "'firm clay lawn' or 'soft clay'?",
    **dict.fromkeys(
        (
            "concrete",
            "patio",
            "asphalt",
            "pavers",
            "slab",
            "concrete slab",
            "pavement",
            "brick",
            "driveway",
            "flagstone",
            "paved",
        ),
        "'paving'",
    ),
}

_TERRAIN_WORDS = {
    **dict.fromkeys(("sea", "coast", "shore", "beach", "d"), "'0'"),
    **dict.fromkeys(("lake", "flat", "1"), "'I'"),
    **dict.fromkeys(("open", "field", "fields", "country", "farmland", "grass", "c", "2"), "'II'"),
    **dict.fromkeys(
        ("suburb", "suburban", "village", "houses", "houses and trees", "woods", "b", "3"), "'III'"
    ),
    **dict.fromkeys(("town", "city", "4"), "'III', or 'IV' where houses above 15 m stand close"),
}
_BASIS_WORDS = {
    **dict.fromkeys(("en 1990", "eurocode", "equ + str", "str"), "'EQU', with STR for the parts"),
    "lrfd": "'strength'",
    "asd": "'allowable'",
}

_TIMBER_WORDS = {
    **dict.fromkeys(("en 1995-1-1", "eurocode 5", "eurocode", "ec5"), "'EN 1995'"),
    **dict.fromkeys(("nds 2018", "awc", "american", "asd", "lrfd"), "'NDS'"),
}

_KEYS = (
    Key(
        "method",
        "choice",
        required=True,
        choices=methods,
        words=_METHOD_WORDS,
        hint="method = 'forecast', if the wind is a gust as warnings state it",
    ),
    Key("wind", "speed", required=True, bounds=WIND),
    Key(
        "ground",
        "choice",
        required=True,
        choices=grounds.ground_names,
        words=_GROUND_WORDS,
        hint="ground = 'wet lawn', if you do not know",
    ),
    Key(
        "exposure",
        "choice",
        choices=tuple(EXPOSURES),
        words=_EXPOSURE_WORDS,
        hint="exposure = 'open', if you do not know",
    ),
    Key("wind_kind", "choice", choices=("ultimate", "nominal", "mean")),
    Key(
        "terrain",
        "choice",
        choices=terrains,
        words=_TERRAIN_WORDS,
        hint="terrain = 'II', if you do not know: grass and single trees or houses",
    ),
    Key("direction_factor", "number", bounds=ANNEX),
    Key("season_factor", "number", bounds=ANNEX),
    Key("probability_factor", "number", bounds=ANNEX),
    Key("turbulence_factor", "number", bounds=ANNEX),
    Key("air_density", "density", bounds=AIR),
    Key("orography", "number", bounds=OROGRAPHY),
    Key("wind_source", "text"),
    Key("slope", "slope"),
    Key("elevation", "length", bounds=ELEVATION),
    Key("topographic", "number", bounds=TOPOGRAPHIC),
    Key("basis", "choice", choices=("allowable", "strength", "service", "EQU"), words=_BASIS_WORDS),
    Key("timber", "choice", choices=TIMBER, words=_TIMBER_WORDS),
    Key("safety", "number", bounds=SAFETY),
    Key("people", "choice", choices=("children", "public", "none")),
    Key("hurricane", "flag"),
    Key("country", "text"),
    Key("gusts", "map"),
    Key("gust_record", "text"),
    Key("gusts_recorded", "choice", choices=("yearly", "daily")),
    Key("sheltering", "flag"),
    Key("return_period", "years", bounds=YEARS),
    Key("risk_category", "numeral", choices=("I", "II", "III", "IV")),
)

_WORDS = {
    "gust": "'wind' with method = 'gust' or 'forecast'",
    "speed": "'wind'",
    "wind_speed": "'wind'",
    "soil": "'ground'",
    "surroundings": "'exposure'",
    "standard": "'method'",
    "code": "'method'",
    "altitude": "'elevation'",
    "factor": "'safety'",
    "safety_factor": "'safety'",
    "kzt": "'topographic'",
    "hill": "'topographic', above 1 on a crest, or 'slope' of the ground",
    "units": "it belongs under [design]",
    "importance": "'risk_category'",
}


def _site(row: Row) -> Site | None:
    method, wind, ground = row.text("method"), row.quantity("wind"), row.text("ground")
    gusts, peaks = _gusts(row), read_record(row)
    if method is None:
        return None
    standard = standard_of(method)
    wind = standard.read_wind(row, method, wind)
    _check_own_keys(row, method)
    basis = row.text("basis") or standard.bases[0]
    if basis not in standard.bases:
        ours = " or ".join(f"'{each}'" for each in standard.bases)
        row.refuse("basis", f"{ours} with method = '{method}'", f"basis = '{standard.bases[0]}'")
    _check_safety(row, basis)
    if wind is None or ground is None or row.wrong:
        return None
    safety = row.quantity("safety")
    exposure = row.text("exposure")
    return Site(
        method=method,
        wind=wind,
        ground=ground,
        exposure=EXPOSURES[exposure] if exposure is not None else None,
        wind_kind=row.text("wind_kind"),
        wind_source=row.text("wind_source"),
        return_period=row.quantity("return_period"),
        risk_category=row.text("risk_category"),
        slope=row.quantity("slope"),
        elevation=row.quantity("elevation"),
        topographic=row.quantity("topographic"),
        terrain=row.text("terrain"),
        direction_factor=row.quantity("direction_factor") or 1.0,
        season_factor=row.quantity("season_factor") or 1.0,
        probability_factor=row.quantity("probability_factor") or 1.0,
        turbulence_factor=row.quantity("turbulence_factor"),
        air_density=row.quantity("air_density"),
        orography=row.quantity("orography"),
        timber=row.text("timber") or timber_with(method),
        timber_given=row.given("timber"),
        basis=basis,
        basis_given=row.given("basis"),
        safety=safety or (SAFETY_DEFAULT if basis == "service" else 1.0),
        safety_given=safety is not None,
        people=row.text("people"),
        hurricane=row.flag("hurricane"),
        country=row.text("country"),
        sheltering=bool(row.flag("sheltering")),
        gusts=gusts,
        peaks=peaks,
        peaks_per=row.text("gusts_recorded") or "yearly",
    )


def _check_own_keys(row: Row, method: str) -> None:
    """Refuse what only EN 1991-1-4 reads where another method is chosen."""
    if method in EN1991.names:
        return
    for key in ("terrain", *ANNEX_KEYS):
        if row.given(key):
            row.refuse(
                key,
                f"no '{key}' with method = '{method}'",
                "method = 'EN 1991-1-4', if the wind is of a European map"
                + ("; else 'exposure'" if key == "terrain" else ""),
            )


def _check_safety(row: Row, basis: str) -> None:
    if row.given("safety") and basis != "service":
        row.refuse(
            "safety",
            f"no 'safety' with basis = '{basis}', which has its own factors",
            "basis = 'service', or leave it out",
        )


def _gusts(row: Row) -> dict[float, float]:
    """Return the gusts by return period, both growing; record a fault where they do not."""
    gusts = dict(sorted(row.by_years("gusts").items()))
    speeds = list(gusts.values())
    if not row.given("gusts") or row.failed("gusts"):
        return gusts
    if len(gusts) < 2:
        row.refuse(
            "gusts",
            "at least two return periods with their gusts",
            "gusts = { 10 = '60 mph', 50 = '75 mph' }",
        )
    elif any(second <= first for first, second in pairwise(speeds)):
        row.refuse("gusts", "a greater gust for each longer return period")
    return gusts


SITE = TableSpec("site", Site, _KEYS, _site, required=True, words=_WORDS)
