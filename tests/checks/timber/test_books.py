"""The two books of timber behind one face, and which of them a site asks."""

from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from joint_designs import POST, joint
from sample_file import design as read_design
from sample_file import site, the_fault

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.members.post_strength import post_strength
from yardfast.checks.members.uprights import Section
from yardfast.checks.timber import books
from yardfast.checks.timber.books import BOOKS, book_of
from yardfast.checks.timber.en1995.panels import strip_factor
from yardfast.checks.timber.en1995.stuff import k_mod, wind_modified
from yardfast.checks.timber.nds.fastener_capacity import adjusted_capacity as by_nds
from yardfast.checks.timber.nds.member_strength import sheet_rolling_shear, sheet_through
from yardfast.checks.timber.nds.standard import NDS_BOOK
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.loads.combinations import EN1995, TIMBER, level_of, resistance_basis, timber_of
from yardfast.loads.wind.site import Site
from yardfast.materials import fasteners, sheets
from yardfast.materials.sheets import find_sheet
from yardfast.units.frozen import replace

EN = "EN 1995, strength"

ALONG = np.array([1.0, 0.0])


def capacity(fastener, driven, basis):
    """Return what one holds by the book of the basis."""
    return book_of(basis).capacity(fastener, driven, basis)


def driven(side="spruce-pine-fir", main="spruce-pine-fir", through=0.038, **more):
    given = {"room": 0.089, "into": "side grain", "made_wet": False, **more}
    return Driven(joint_material_of(side), joint_material_of(main), through, **given)


def test_every_book_that_a_site_may_name_is_there():
    assert tuple(BOOKS) == TIMBER
    for name, opened in BOOKS.items():
        book = opened()
        assert book.name == name
        basis = resistance_basis(Site("forecast", 20.0, "paving", timber=book.name))
        assert book_of(basis) is book
        assert (timber_of(basis), level_of(basis)) == (book.name, "service")


def test_another_book_is_a_key_error(monkeypatch):
    monkeypatch.setattr(books, "BOOKS", {NDS_BOOK.name: BOOKS[NDS_BOOK.name]})
    with pytest.raises(KeyError, match="EN 1995"):
        book_of(EN)


def test_nds_is_nds_through_the_face():
    nail = fasteners.find_fastener("10d common nail")
    for basis in ("service", "allowable", "strength"):
        assert capacity(nail, driven(), basis) == by_nds(nail, driven(), basis)


def test_a_european_site_asks_the_european_book_unless_it_says_otherwise():
    european = "method = 'EN 1991-1-4'\nwind = '24 m/s'\nterrain = 'II'\nground = 'paving'\n"
    plain = read_design(site(european)).table(Site)
    assert (plain.timber, resistance_basis(plain)) == (EN1995, EN)
    told = read_design(site(european + "timber = 'NDS'")).table(Site)
    assert resistance_basis(told) == "strength"
    assert read_design().table(Site).timber == "NDS"


def test_a_word_for_the_book_is_understood_and_another_refused():
    keys = "method = 'forecast'\nwind = '58 mph'\nexposure = 'open'\nground = 'firm lawn'\n"
    assert read_design(site(keys + "timber = 'eurocode 5'")).table(Site).timber == EN1995
    fault = the_fault(site(keys + "timber = 'oak'"))
    assert (fault.key, fault.found) == ("timber", "oak")
    assert "EN 1995" in fault.expected


@pytest.mark.parametrize(("load", "over"), [("normal", 0.7 / 0.65), ("permanent", 0.7 / 0.5)])
def test_what_lasts_longer_is_held_less(load, over):
    """k_mod of service class 3: 0.7 short-term, 0.65 medium-term, 0.5 permanent (Table 3.1)."""
    assert book_of(EN).wind_over(load, EN) == pytest.approx(over)


def test_loads_without_factors_ask_for_the_factor_on_wind():
    """Resistances of EN 1995 stand against 1.5 Q (EN 1990 Table A1.2(B)): else they are over it."""
    nail = fasteners.find_fastener("10d common nail")
    high, low = (capacity(nail, driven(), f"EN 1995, {level}") for level in ("strength", "service"))
    assert high.sideways == pytest.approx(1.5 * low.sideways)


def test_a_nail_by_hand():
    """10d common, 3.76 x 76.2 mm, 38 mm of SPF on SPF: rho_k 310, smooth, driven dry, outdoors.

    f_h 17.08 N/mm2, M_y 5,633 N mm; (d) and (e) 1.05 x, (f) 1.15 x; rope 15 % at most.
    """
    d, t1, t2 = 3.7592, 38.0, 38.2
    f, M = 0.082 * 310 * d**-0.3, 180.0 * d**2.6
    one = 1.05 * f * t1 * d / 3.0 * ((4.0 + 12.0 * M / (f * d * t1**2)) ** 0.5 - 1.0)
    two = 1.15 * (2.0 * M * f * d) ** 0.5
    pull = 20e-6 * 310**2 * d * t2 * (t2 / d / 4.0 - 2.0)
    head = 70e-6 * 310**2 * (fasteners.find_fastener("10d common nail").head_diameter * 1000.0) ** 2
    least = min(one, two)
    Fv = least + min(0.15 * least, min(pull, head) / 4.0)
    holds = capacity(fasteners.find_fastener("10d common nail"), driven(), EN)
    assert holds.sideways == pytest.approx(Fv * 0.7 / 1.3, rel=1e-3)
    assert holds.out == pytest.approx(pull * 0.7 / 1.3, rel=1e-3)
    assert holds.mode == ("IV" if two < one else "IIIs")


def test_end_grain_edges_and_wet_nails_by_the_european_book():
    nail, screw = (
        fasteners.find_fastener("10d common nail"),
        fasteners.find_fastener("#10 wood screw 3 in"),
    )
    straight = capacity(nail, driven(), EN)
    for into in ("end grain", "panel edge"):
        for one in (nail, screw):
            held = capacity(one, driven(into=into), EN)
            assert held.out == 0.0
            assert into in held.reasons
    assert capacity(nail, driven(into="end grain"), EN).sideways < straight.sideways / 2.9
    wet = capacity(nail, driven(made_wet=True), EN)
    assert wet.out == pytest.approx(straight.out * 2.0 / 3.0)


def test_osb_has_no_place_in_the_open_by_the_european_book():
    holds = capacity(fasteners.find_fastener("8d common nail"), driven("OSB", through=0.018), EN)
    assert (holds.out, holds.head, holds.sideways) == (0.0, 0.0, 0.0)
    assert "not outdoors" in holds.reasons
    assert (
        book_of(EN).sheet_bending(sheets.find_sheet("OSB", 0.018), np.ones(1), EN, across=False)
        is None
    )
    dry = capacity(
        fasteners.find_fastener("8d common nail"), driven("OSB", through=0.018, stays_dry=True), EN
    )
    assert dry.sideways > 0.0


@given(st.sampled_from(["8d common nail", "#10 wood screw 3 in", "1/4 lag screw 4 in"]), st.data())
def test_denser_wood_and_dry_places_never_hold_less(name, data):
    light, heavy = "western redcedar", "southern pine"
    wet = data.draw(st.booleans())
    one, other = (
        capacity(fasteners.find_fastener(name), driven(wood, wood, 0.019, made_wet=wet), EN)
        for wood in (light, heavy)
    )
    assert one.out <= other.out
    assert one.sideways <= other.sideways
    dry = capacity(fasteners.find_fastener(name), driven(light, light, 0.019, stays_dry=True), EN)
    assert dry.sideways >= one.sideways


def test_a_post_pressed_and_bent_by_hand():
    """4x4 of SPF stud grade, C14, 2 m, both ends held: k_c, and pressed and bent (6.23)."""
    b = 0.0889
    post = post_strength(Section(ALONG, b, b), "spruce-pine-fir", "stud", 2.0, EN, between=True)
    slender = 2.0 / (b / 12.0**0.5)
    ratio = slender / np.pi * (16.0 / 4700.0) ** 0.5
    k = 0.5 * (1.0 + 0.2 * (ratio - 0.3) + ratio**2)
    kc = 1.0 / (k + (k**2 - ratio**2) ** 0.5)
    share = 0.7 / 1.3
    size = (150.0 / 88.9) ** 0.2
    N, M = 4000.0, 300.0
    used = N / b**2 / (kc * 16.0e6 * share) + M / (b**3 / 6.0) / (14.0e6 * share * size)
    found = post.use(np.array([N]), np.array([M]), np.array([0.0]), 2.0)
    assert found[0] == pytest.approx(used, rel=1e-6)
    drawn = post.use(np.array([-N]), np.array([0.0]), np.array([0.0]), 2.0)
    assert drawn[0] == pytest.approx(N / b**2 / (7.2e6 * share * size), rel=1e-6)
    assert post.shear_force == pytest.approx(3.0e6 * 0.67 * share * b**2 / 1.5)


def test_what_lasts_is_only_on_the_load_by_the_european_book():
    """k_c has no k_mod: a load that counts 1.4 times is used 1.4 times as much, pressed or bent."""
    b = 0.0889
    post = post_strength(Section(ALONG, b, b), "spruce-pine-fir", "stud", 2.0, EN, between=True)
    for pressed, moment in ((4000.0, 0.0), (0.0, 300.0), (4000.0, 300.0)):
        args = np.array([pressed]), np.array([moment]), np.array([0.0])
        once = post.use(*args, 2.0)
        longer = post.use(*(1.4 * each for each in args), 2.0, 1.4)
        assert longer == pytest.approx(1.4 * once)


def test_what_stays_dry_counts_for_no_more_than_it_holds_for_long():
    """Table 3.1, class 2: OSB/3 0.70 under wind, 0.30 for good; solid wood outdoors 1.4 apart."""
    for stuff in ("solid", "plywood", "OSB"):
        for load, lasts in (("permanent", "permanent"), ("normal", "medium-term")):
            longer = k_mod(stuff, lasts, dry=True)
            assert wind_modified(stuff, dry=True) <= longer * book_of(EN).wind_over(load, EN) * (
                1.0 + 1e-12
            )
    assert wind_modified("OSB", dry=True) == pytest.approx(0.30 * 1.4)
    assert wind_modified("OSB", dry=False) is None
    for stuff in ("solid", "plywood"):
        assert wind_modified(stuff, dry=False) == pytest.approx(0.7)


def test_narrow_strips_of_sheets_hold_less_without_a_jump():
    """Judgement after C_s of the Panel Design Specification: a fifth less at 8 in than at 12."""
    widths = np.linspace(0.05, 0.6, 1101)
    found = strip_factor(widths)
    assert found[0] == pytest.approx(0.8)
    assert found[-1] == 1.0
    assert np.all((np.diff(found) >= 0.0) & (np.diff(found) < 0.002))
    sheet = sheets.find_sheet("softwood plywood", 0.018)
    wide, narrow = book_of(EN).sheet_bending(sheet, np.array([0.6, 0.1]), EN, across=False)
    assert narrow == pytest.approx(0.8 * wide)


class _HalfOfNDS:
    """A third book, as a test double: half of NDS for fasteners, all of it for the rest."""

    name = title = "half book"

    def __getattr__(self, asked):
        return getattr(NDS_BOOK, asked)

    def capacity(self, fastener, driven, basis, count=1, apart=inf):
        whole = NDS_BOOK.capacity(fastener, driven, basis, count, apart)
        halves = {name: getattr(whole, name) / 2.0 for name in ("out", "head", "sideways")}
        return replace(whole, **halves, book=self.title, source="The Half Book, its one page")


def test_a_third_book_is_asked_by_its_name_alone(monkeypatch):
    """A folder, its name in ``BOOKS`` and in ``TIMBER``: nothing else of the house knows of it."""
    monkeypatch.setattr(books, "BOOKS", {**BOOKS, "half book": _HalfOfNDS})
    whole = examine(read_text(POST + joint("block", "plank")))
    site = replace(whole.site, timber="half book")
    assert resistance_basis(site) == "half book, service"
    halved = examine(replace(whole.design, tables={**whole.design.tables, Site: site}))
    for half, all_ in zip(halved.joints, whole.joints, strict=True):
        assert half.holds.sideways == pytest.approx(all_.holds.sideways / 2.0)
        assert half.check.utilization == pytest.approx(2.0 * all_.check.utilization, rel=0.05)
        assert "The Half Book" in half.check.source
        assert half.holds.book == "half book"


@pytest.mark.parametrize("across", [False, True])
def test_what_the_layers_of_a_sheet_hold_wet_and_under_wind(across):
    """APA Panel Design Specification D510 4.5.2 (memory): 0.75 of it wet; NDS 2018 2.3.2: 1.6 in
    wind."""
    sheet = find_sheet("softwood plywood", 0.018)
    found = sheet_rolling_shear(sheet, "allowable", across)
    assert found == pytest.approx(sheet.shear[1 if across else 0] * 0.75 * 1.6)
    assert sheet_through(sheet, "allowable") == pytest.approx(sheet.through * 0.75 * 1.6)
