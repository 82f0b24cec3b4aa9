"""A colour as she writes it, and how far two stand out from each other."""

import re

from ledger.errors import BadInput

BLACK, WHITE = "#000000", "#ffffff"
# Web Content Accessibility Guidelines 2.1, success criteria 1.4.3 and 1.4.11, from memory: of text, of other things.
TEXT_CONTRAST, SHAPE_CONTRAST = 4.5, 3.0


def read_colour(text: str) -> str:
    """A colour in six figures of sixteen, as screens and print shops write it. Raises BadInput."""
    short = re.fullmatch(r"#?([0-9A-Fa-f]{6}|[0-9A-Fa-f]{3})", text.strip())
    if short is None:
        raise BadInput(f"'{text}' is not a colour; write red, green and blue in six figures, such as \"#7a8f3c\".")
    figures = short[1].lower()
    return "#" + (figures if len(figures) == 6 else "".join(2 * one for one in figures))


def luminance(colour: str) -> float:
    """The relative luminance, from 0 (black) to 1 (white): WCAG 2.1, definition of that name, from memory."""

    def linear(figures: str) -> float:
        share = int(figures, 16) / 255
        return share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(colour[at : at + 2]) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """How far two colours stand out from each other, from 1 to 21: WCAG 2.1, "contrast ratio", from memory."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def ink_on(colour: str) -> str:
    """Black or white, whichever stands out more; 4.58 at least on any colour, since (4.58)² = 21."""
    return BLACK if contrast(BLACK, colour) >= contrast(WHITE, colour) else WHITE
