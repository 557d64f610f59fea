# Makes ReportSans-*.woff2, the page's font, from the shipped Source Sans 3. Run by hand with Debian's python3-fonttools and python3-brotli:
#   /usr/bin/python3 make-report-sans.py
# Kept: Latin with its extension A, Greek, punctuation, superscripts and subscripts, and the signs of formulas; tabular figures and kerning.
# Letters of other scripts fall back to the reader's own fonts. The licence (SourceSans3-LICENSE.txt) reserves the name "Source", so what is
# changed has a name of its own.
import io

from fontTools import subset
from fontTools.ttLib import TTFont

LETTERS = (
    "U+0020-007E,U+00A0-017F,U+0218-021B,U+0233,U+0304,U+0391-03A9,U+03B1-03C9,U+1D40,U+1D62-1D65,U+2010-2015,U+2018-201E,U+2020-2022,U+2026,U+202F,"
    "U+2030,U+2032,U+2033,U+2039,U+203A,U+2044,U+2070-208E,U+2090-209C,U+20AC,U+2122,U+2190-2193,U+2202,U+2206,U+220F,U+2211,U+2212,U+221A,U+221D,"
    "U+221E,U+222B,U+2248,U+2260,U+2264,U+2265,U+2308,U+2309,U+2C7C"
)
NAME = "Report Sans"

for weight in ("Regular", "SemiBold"):
    options = subset.Options(flavor="woff2", layout_features=["kern", "tnum"], hinting=False, desubroutinize=True, name_IDs=[0, 1, 2, 3, 4, 6, 13, 14, 16, 17])
    font = subset.load_font(f"SourceSans3-{weight}.ttf", options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=subset.parse_unicodes(LETTERS))
    subsetter.subset(font)
    for record in font["name"].names:
        text = {1: NAME, 2: weight, 3: f"{NAME} {weight}", 4: f"{NAME} {weight}", 6: f"ReportSans-{weight}", 16: NAME, 17: weight}.get(record.nameID)
        if text:
            font["name"].setName(text, record.nameID, record.platformID, record.platEncID, record.langID)
    font["head"].modified = font["head"].created
    subset.save_font(font, f"ReportSans-{weight}.woff2", options)
    print(weight, len(font.getBestCmap()))
