"""Books of timber: what wood, sheets and fasteners resist, by NDS or by EN 1995-1-1."""
