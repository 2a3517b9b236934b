"""How sheltered the ground upwind is: the letters of ASCE 7 and the words for them."""

EXPOSURES = {"houses and trees": "B", "open": "C", "shore": "D", "B": "B", "C": "C", "D": "D"}
"""What may be written, and the exposure category of ASCE/SEI 7-16/7-22 26.7.3 that it means.

B only with 1,500 ft (460 m) of suburb or trees upwind in every direction (26.7.3, mean roof height
up to 30 ft).
"""


def exposure_letter(text: str) -> str:
    """Return "B", "C" or "D" for a letter or words of ``EXPOSURES``.

    ValueError names what is expected when the text is none of them.
    """
    if text not in EXPOSURES:
        expected = ", ".join(f'"{word}"' for word in EXPOSURES)
        raise ValueError(f'exposure: found "{text}", expected one of {expected}')
    return EXPOSURES[text]
