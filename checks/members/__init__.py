"""The strength of parts themselves: posts, beams, boards, walls, roofs, decks and blades."""
