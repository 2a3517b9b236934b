"""What a name means, in SI: woods, panels, other materials and grounds, from the references."""

from .material import Material, all_materials, find_material, material_names

__all__ = ["Material", "all_materials", "find_material", "material_names"]
