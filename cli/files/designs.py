"""A design as its file says it, with what the shop's file beside it says once for all."""

from pathlib import Path

from ...checks import inputs
from ...design.model import Design
from ...loads.wind.site import Site
from ...report.printed.shop import Shop, read_shop, shop_file
from ...units.frozen import replace


def read_with_shop(file: str) -> Design:
    """Return the design in a file. DesignError with all that is wrong in it, or in the shop's."""
    return with_shop(inputs.read(file), shop_of(file))


def shop_of(file: str) -> Shop:
    """Return the shop that serves a design's file; one that says nothing where there is none."""
    place: Path | None = shop_file(file)
    return Shop() if place is None else read_shop(place)


def with_shop(design: Design, shop: Shop) -> Design:
    """Return a design with the maker, contact and country of a shop where it says none itself."""
    site = design.table(Site)
    site = replace(site, country=site.country or shop.country)
    return replace(
        design,
        maker=design.maker or shop.maker,
        contact=design.contact or shop.contact,
        tables={**design.tables, Site: site},
    )
