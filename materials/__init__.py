"""What a name means, in SI: woods, panels, other materials and grounds, from the references."""

from .material import Material, find, listing, names

__all__ = ["Material", "find", "listing", "names"]
