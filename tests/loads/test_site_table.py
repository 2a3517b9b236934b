"""The ``[site]`` table becomes a Site in SI, or faults that say what would be right."""

from math import atan, radians, sqrt

import pytest
from sample_file import design, faults, site, the_fault

from yardfast.loads.wind.site import Site

MPH = 0.44704  # international mile, exact
FORECAST = "method='forecast'\nground='sand'\nexposure='C'\nwind='40 mph'\n"
EN = "method='EN 1991-1-4'\nground='sand'\nterrain='II'\nwind='26 m/s'\n"
ASCE = "method='ASCE 7-22'\nground='sand'\nexposure='C'\n"


def found(keys: str) -> Site:
    return design(site(keys)).table(Site)


@pytest.mark.parametrize(
    ("written", "exposure"),
    [("B", "B"), ("c", "C"), ("D", "D"), ("houses and trees", "B"), ("open", "C"), ("Shore", "D")],
)
def test_exposure_is_a_letter_or_words(written: str, exposure: str) -> None:
    keys = f"method='forecast'\nground='sand'\nwind='40 mph'\nexposure='{written}'"
    assert found(keys).exposure == exposure


def test_a_gust_at_the_piece_needs_no_exposure_and_may_have_one() -> None:
    keys = "method='gust'\nground='sand'\nwind='20 m/s'"
    assert found(keys).exposure is None
    assert found(keys).wind == pytest.approx(20.0)
    assert found(f"{keys}\nexposure='B'").exposure == "B"


@pytest.mark.parametrize("method", ["forecast", "ASCE 7-22", "ASCE 7-16"])
def test_every_other_method_needs_exposure(method: str) -> None:
    fault = the_fault(site(f"method='{method}'\nground='sand'\nwind='100 mph'"))
    assert (fault.key, fault.found) == ("exposure", "no 'exposure'")


def test_a_nominal_wind_becomes_ultimate() -> None:
    # ASCE 7-10 and later, commentary to chapter 26: V_asd = V_ult * sqrt(0.6).
    ultimate = found(f"{ASCE}wind='90 mph'\nwind_kind='nominal'").wind
    assert ultimate * sqrt(0.6) == pytest.approx(90 * MPH)


def test_a_low_map_wind_must_be_said_to_be_ultimate() -> None:
    fault = the_fault(site(f"{ASCE}wind='84 mph'"))
    assert (fault.key, fault.found) == ("wind", "84 mph")
    assert "wind_kind = 'ultimate'" in fault.hint
    assert found(f"{ASCE}wind='84 mph'\nwind_kind='ultimate'").wind == pytest.approx(84 * MPH)
    assert found(f"{ASCE}wind='85 mph'").wind == pytest.approx(85 * MPH)


@pytest.mark.parametrize(
    ("keys", "basis", "safety", "given"),
    [
        (FORECAST, "service", 1.5, (False, False)),
        (f"{FORECAST}safety=2", "service", 2.0, (False, True)),
        (f"{FORECAST}basis='strength'", "strength", 1.0, (True, False)),
        (f"{ASCE}wind='105 mph'", "allowable", 1.0, (False, False)),
        (f"{ASCE}wind='105 mph'\nbasis='service'", "service", 1.5, (True, False)),
    ],
)
def test_the_basis_follows_the_method_unless_it_is_given(keys, basis, safety, given) -> None:
    place = found(keys)
    assert (place.basis, place.safety) == (basis, safety)
    assert (place.basis_given, place.safety_given) == given


def test_what_else_is_given_is_kept() -> None:
    place = found(
        f"{ASCE}wind='115 mph'\nwind_source='county map'\nreturn_period='700 years'\n"
        "risk_category=2\nslope='10 %'\nelevation='1000 m'\ntopographic=1.2\npeople='children'\n"
        "hurricane=false\ncountry='US'\nsheltering=true\ngusts={ 50 = '75 mph', 10 = '60 mph' }"
    )
    assert (place.wind_source, place.return_period, place.risk_category) == (
        "county map",
        700,
        "II",
    )
    assert place.slope == pytest.approx(atan(0.1))
    assert (place.elevation, place.topographic, place.people) == (1000, 1.2, "children")
    assert (place.hurricane, place.country, place.sheltering) == (False, "US", True)
    assert list(place.gusts) == [10, 50]
    assert place.gusts[50] == pytest.approx(75 * MPH)


def test_a_return_period_may_have_a_decimal() -> None:
    gusts = found(f"{FORECAST}gusts={{ 1.5 = '50 mph', 1.75 = '55 mph', 10 = '60 mph' }}").gusts
    assert list(gusts) == [1.5, 1.75, 10]
    assert gusts[1.75] == pytest.approx(55 * MPH)


def test_gusts_may_be_a_table_of_their_own() -> None:
    assert found(f"{FORECAST}[site.gusts]\n10='60 mph'\n50='75 mph'").gusts == {
        10: pytest.approx(60 * MPH),
        50: pytest.approx(75 * MPH),
    }


def test_a_low_place_lies_below_the_sea() -> None:
    assert found(f"{FORECAST}elevation='-100 m'").elevation == -100


@pytest.mark.parametrize(
    ("keys", "key", "expected", "hint"),
    [
        (FORECAST.replace("forecast", "forcast"), "method", "'forecast'", "'forecast'?"),
        (FORECAST.replace("'40 mph'", "40"), "wind", "a speed", "wind = '40 mph'"),
        (FORECAST.replace("'40 mph'", "'0 mph'"), "wind", "more than 0", ""),
        (FORECAST.replace("40 mph", "301 mph"), "wind", "300 mph", ""),
        (FORECAST.replace("40 mph", "40 ft"), "wind", "a speed", "a length"),
        (FORECAST.replace("sand", "grass"), "ground", "'firm lawn'", "'wet lawn'"),
        (FORECAST.replace("sand", "wet lwan"), "ground", "'wet lawn'", "'wet lawn'?"),
        (FORECAST.replace("'C'", "'suburban'"), "exposure", "'open'", "'houses and trees'"),
        (f"{FORECAST}wind_kind='ultimate'", "wind_kind", "no 'wind_kind'", "leave it out"),
        (f"{FORECAST}slope='31 deg'", "slope", "30 degrees", ""),
        (f"{FORECAST}slope=5", "slope", "a slope", "slope = '5 deg'"),
        (f"{FORECAST}safety=0.9", "safety", "from 1 to 5", ""),
        (f"{FORECAST}safety=nan", "safety", "finite", ""),
        (f"{FORECAST}safety=inf", "safety", "finite", ""),
        (f"{FORECAST}safety='2'", "safety", "a plain number", "safety = 2"),
        (f"{FORECAST}basis='strength'\nsafety=2", "safety", "no 'safety'", "'service'"),
        (f"{ASCE}wind='105 mph'\nsafety=2", "safety", "no 'safety'", "'service'"),
        (f"{FORECAST}basis='EQU'", "basis", "'allowable'", "'service'"),
        (f"{FORECAST}terrain='II'", "terrain", "no 'terrain'", "'exposure'"),
        (f"{FORECAST}orography=1.1", "orography", "no 'orography'", "EN 1991-1-4"),
        (f"{ASCE}wind='105 mph'\nwind_kind='mean'", "wind_kind", "3-second", "ten-minute mean"),
        (f"{EN}exposure='B'", "exposure", "no 'exposure'", "terrain = 'III'"),
        (f"{EN}exposure='open'", "exposure", "no 'exposure'", "terrain = 'II'"),
        (f"{EN}exposure='shore'", "exposure", "no 'exposure'", "terrain = '0'"),
        (f"{EN}topographic=1.2", "topographic", "no 'topographic'", "orography"),
        (f"{EN}wind_kind='ultimate'", "wind_kind", "mean over ten minutes", "'ASCE 7-22'"),
        (f"{EN}basis='allowable'", "basis", "'EQU' or 'service'", "'EQU'"),
        (f"{EN}direction_factor=0", "direction_factor", "more than 0", ""),
        (f"{EN}air_density='2 kg/m^3'", "air_density", "from 0.9 to 1.4", "1.25"),
        (EN.replace("26 m/s", "105 mph"), "wind", "mean over ten minutes", "wind_kind = 'mean'"),
        (EN.replace("26 m/s", "58 mph"), "wind", "mean over ten minutes", "method = 'forecast'"),
        (EN.replace("terrain='II'\n", ""), "terrain", "'0'", "terrain = 'II'"),
        (EN.replace("'II'", "'V'"), "terrain", "'IV'", ""),
        (f"{FORECAST}topographic=0.9", "topographic", "from 1", ""),
        (
            "method='gust'\nground='sand'\nwind='40 mph'\ntopographic=1.2",
            "topographic",
            "no 'topographic'",
            "",
        ),
        (f"{FORECAST}people='dogs'", "people", "'children', 'public'", ""),
        (f"{FORECAST}hurricane='no'", "hurricane", "true or false", "hurricane = false"),
        (f"{FORECAST}risk_category='V'", "risk_category", "'I', 'II'", ""),
        (f"{FORECAST}risk_category=5", "risk_category", "'I', 'II'", ""),
        (f"{FORECAST}return_period='long'", "return_period", "number of years", ""),
        (f"{FORECAST}return_period=true", "return_period", "number of years", ""),
        (f"{FORECAST}gusts={{ 10 = '60 mph' }}", "gusts", "at least two", ""),
        (f"{FORECAST}gusts={{ 10 = '60 mph', 50 = '60 mph' }}", "gusts", "a greater gust", ""),
        (f"{FORECAST}gusts={{ 10 = '60 mph', x = '70 mph' }}", "gusts", "return period", ""),
        (f"{FORECAST}gusts={{ 10 = '60 mph', 50 = 70 }}", "gusts", "a speed", "mph"),
        (f"{FORECAST}gusts={{ 10 = '60 mph', 1.x = '70 mph' }}", "gusts", "return period", ""),
        (f"{FORECAST}gusts='60 mph'", "gusts", "return periods", "{ 10 ="),
        (f"{FORECAST}speed='60 mph'", "speed", "one of method", "'wind'"),
        (f"{FORECAST}elevaton='600 ft'", "elevaton", "one of method", "'elevation'?"),
    ],
)
def test_what_is_wrong_with_a_site_is_one_fault(keys, key, expected, hint) -> None:
    fault = the_fault(site(keys))
    assert (fault.part, fault.key) == (None, key)
    assert expected in fault.expected
    assert hint in fault.hint
    assert fault.line is not None


def test_words_of_one_meaning_are_read_as_it() -> None:
    here = found(EN.replace("EN 1991-1-4", "eurocode").replace("'II'", "'suburb'"))
    assert (here.method, here.terrain) == ("EN 1991-1-4", "III")


def test_a_european_site_is_read_with_its_annex() -> None:
    annex = "direction_factor=0.9\nseason_factor=0.95\nprobability_factor=1.04\norography=1.1\n"
    annex += "turbulence_factor=0.9\nair_density='1.2 kg/m^3'\n"
    here = found(EN + annex)
    assert (here.terrain, here.exposure, here.basis) == ("II", None, "EQU")
    assert here.wind == pytest.approx(26.0)
    assert (here.direction_factor, here.season_factor, here.probability_factor) == (0.9, 0.95, 1.04)
    assert (here.orography, here.turbulence_factor) == (1.1, 0.9)
    assert here.air_density == pytest.approx(1.2)
    assert found(f"{EN.replace('26 m/s', '45 m/s')}wind_kind='mean'").wind == pytest.approx(45.0)


def test_a_missing_site_is_asked_for() -> None:
    text = site("").replace("[site]", "")
    assert [fault.found for fault in faults(text)] == ["no [site]"]


def test_thirty_degrees_are_still_a_slope() -> None:
    assert found(f"{FORECAST}slope='30 deg'").slope == pytest.approx(radians(30))
