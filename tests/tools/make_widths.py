#!/usr/bin/python3
"""Writes core/layout/inter_widths.inc: advance widths of Inter in font units, and the ranges of marks without width.

    sudo apt-get install fonts-inter python3-fonttools
    tests/tools/make_widths.py > core/layout/inter_widths.inc

Figures only, no part of the font. The marks are the categories Mn, Me and Cf of Python's own Unicode data.
"""
import sys
import unicodedata

from fontTools.ttLib import TTFont

FOLDER = "/usr/share/fonts/opentype/inter/"
LAST = 0x2BFF  # Latin, Greek, Cyrillic, punctuation, currency, arrows, mathematics, shapes, dingbats
ZERO = {"Mn", "Me", "Cf"}


def is_zero(code):
    return unicodedata.category(chr(code)) in ZERO


def spans(codes):
    found = []
    for code in codes:
        if found and found[-1][1] == code - 1:
            found[-1][1] = code
        else:
            found.append([code, code])
    return found


def rows(items, per_row):
    return "\n".join("    " + ", ".join(items[i:i + per_row]) + "," for i in range(0, len(items), per_row))


def main():
    regular = TTFont(FOLDER + "Inter-Regular.otf")
    semibold = TTFont(FOLDER + "Inter-SemiBold.otf")
    em = regular["head"].unitsPerEm
    assert em == semibold["head"].unitsPerEm
    maps = [(font.getBestCmap(), font["hmtx"]) for font in (regular, semibold)]
    codes = [c for c in range(0x20, LAST + 1) if all(c in cmap for cmap, _ in maps) and not is_zero(c)]
    widths = ["{%d, %d}" % tuple(hmtx[cmap[c]][0] for cmap, hmtx in maps) for c in codes]
    found, start = [], 0
    for first, last in spans(codes):
        found.append("{0x%x, 0x%x, %d}" % (first, last, start))
        start += last - first + 1
    zero = ["{0x%x, 0x%x}" % tuple(s) for s in spans(c for c in range(0x110000) if is_zero(c))]
    version = regular["name"].getDebugName(5)
    print(f"""// Made by tests/tools/make_widths.py from Inter ({version}), Debian package fonts-inter. Do not edit.
// clang-format off
constexpr int kUnitsPerEm = {em};
// First and last character of a run, and where its widths begin.
constexpr std::array<Run, {len(found)}> kRuns{{{{
{rows(found, 5)}
}}}};
// Regular, semibold.
constexpr std::array<Widths, {len(widths)}> kWidths{{{{
{rows(widths, 8)}
}}}};
// Combining marks and invisible characters, Unicode {unicodedata.unidata_version}.
constexpr std::array<Span, {len(zero)}> kZeroWidth{{{{
{rows(zero, 6)}
}}}};
// clang-format on""")


if __name__ == "__main__":
    sys.exit(main())
