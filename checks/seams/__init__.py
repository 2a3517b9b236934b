"""The seams of many-sided bodies of flat panels: what runs along them, and what fastens them."""
