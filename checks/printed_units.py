"""The units in which NDS and the Wood Handbook print their equations, in SI; all exact.

Source: NIST Special Publication 811 (2008), appendix B.
"""

INCH = 0.0254
POUND_FORCE = 4.4482216152605
PSI = POUND_FORCE / INCH**2
"""One pound-force per square inch in Pa."""
POUND_FORCE_PER_INCH = POUND_FORCE / INCH
"""In N/m."""
