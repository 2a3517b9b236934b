"""Wind by ASCE/SEI 7, editions 7-22 and 7-16."""
