"""Overturning, sliding, bearing and anchoring, and what follows from them."""
