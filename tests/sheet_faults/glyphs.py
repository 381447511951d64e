"""What the letters of a text cover, from the outlines of the font that the program draws with
(Debian's fonts-osifont); one em of the font is the text's font-size."""

import functools

from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

FONT = "/usr/share/fonts/truetype/osifont/osifont.ttf"


@functools.cache
def _font():
    font = TTFont(FONT, lazy=False)
    return font.getGlyphSet(), font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm


@functools.cache
def _glyph(character):
    """(advance, ink box or None) in em, y upwards; KeyError where the font has no such glyph."""
    glyphs, names, advances, em = _font()
    name = names[ord(character)]
    pen = BoundsPen(glyphs)
    glyphs[name].draw(pen)
    return advances[name][0] / em, pen.bounds and tuple(v / em for v in pen.bounds)


def boxes(words, x, y, size, anchor="start"):
    """(left, top, right, bottom) of each letter's ink, in the drawing's unit, y downwards. A gap
    between two letters belongs to the first: a stroke through it is a stroke through the text."""
    width = sum(_glyph(c)[0] for c in words) * size
    at = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    found = []
    for character in words:
        advance, ink = _glyph(character)
        if ink:
            left, bottom, right, top = (v * size for v in ink)
            if found:
                found[-1] = (*found[-1][:2], max(found[-1][2], at + left), found[-1][3])
            found.append((at + left, y - top, at + right, y - bottom))
        at += advance * size
    return found
