"""The units in which NDS and the Wood Handbook print their equations, in SI."""

from ...units import INCH, POUND_FORCE, PSI

__all__ = ["INCH", "POUND_FORCE", "POUND_FORCE_PER_INCH", "PSI"]

POUND_FORCE_PER_INCH = POUND_FORCE / INCH
"""In N/m."""
