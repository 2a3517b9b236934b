"""Wind by EN 1991-1-4:2005 with A1:2010, recommended values; a National Annex may say others."""
