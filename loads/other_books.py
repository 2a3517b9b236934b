"""The same site by every book of wind that it allows."""

from ..units.frozen import replace
from .combinations import SAFETY_DEFAULT
from .en1991.standard import EN1991, NEAREST
from .gust.standard import FORECAST
from .methods import methods, standard_of, timber_with
from .wind.site import OPEN_COUNTRY, Site


def in_every_book(site: Site, height: float) -> tuple[Site, ...]:
    """Return the site by its own method, then by every other that it allows.

    ``height`` in m is that of the piece's top. A forecast's gust sets the speed of every book, by
    that book's own profile of the wind over open country. A map's speed goes to other editions of
    its own book and to the gust at the piece, but into no other book's map; a gust at the piece
    stands alone, and a hill's factor is not turned into another book's: nothing else is converted.
    """
    own = standard_of(site.method)
    gust = own.open_gust(site)
    others = () if gust is None else [m for m in methods() if m not in (site.method, FORECAST)]
    found = [site]
    for method in others:
        book = standard_of(method)
        mapped = book.is_code and book is not own
        if gust is None or (mapped and site.method != FORECAST) or _has_hill(site, method):
            continue
        there = _moved(site, method)
        found.append(replace(there, wind=book.speed_of(gust, there, height)))
    return tuple(found)


def _moved(site: Site, method: str) -> Site:
    """Return the site by another method on that one's own basis, in the like surroundings."""
    book = standard_of(method)
    kept = site.basis_given and site.basis in book.bases
    basis = site.basis if kept else book.bases[0]
    safety = SAFETY_DEFAULT if basis == "service" else 1.0
    exposure = site.exposure
    if exposure is None:
        back = {terrain: letter for letter, terrain in NEAREST.items()}
        exposure = back.get(site.terrain or "", OPEN_COUNTRY)
    timber = site.timber if site.timber_given else timber_with(method)
    there = replace(
        site, method=method, basis=basis, timber=timber, safety=site.safety if kept else safety
    )
    return book.in_surroundings(replace(there, exposure=exposure, terrain=None), exposure)


def _has_hill(site: Site, method: str) -> bool:
    """Return whether a hill's factor of one book would have to be read by another."""
    european = site.terrain is not None
    to_europe = standard_of(method) is EN1991
    hill = site.orography if european else site.topographic
    return hill not in (None, 1.0) and european != to_europe
