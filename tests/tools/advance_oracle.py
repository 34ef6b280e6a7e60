#!/usr/bin/python3
"""Prints "code regular semibold" for every character of Inter up to U+2BFF in font units, as FreeType reads the font.

Independent of make_widths.py, which reads it with fontTools. Exit code 3: no font or no FreeType.
"""
import ctypes
import sys

FOLDER = "/usr/share/fonts/opentype/inter/"
NO_SCALE = 1  # FT_LOAD_NO_SCALE


def main():
    try:
        ft = ctypes.CDLL("libfreetype.so.6")
    except OSError:
        return 3
    library = ctypes.c_void_p()
    ft.FT_Init_FreeType(ctypes.byref(library))
    ft.FT_Get_Char_Index.argtypes = [ctypes.c_void_p, ctypes.c_ulong]
    ft.FT_Get_Advance.argtypes = [ctypes.c_void_p, ctypes.c_uint, ctypes.c_int32, ctypes.POINTER(ctypes.c_long)]
    faces = []
    for name in ("Regular", "SemiBold"):
        face = ctypes.c_void_p()
        if ft.FT_New_Face(library, (FOLDER + f"Inter-{name}.otf").encode(), 0, ctypes.byref(face)):
            return 3
        faces.append(face)
    for code in range(0x20, 0x2C00):
        glyphs = [ft.FT_Get_Char_Index(face, code) for face in faces]
        if all(glyphs):
            advances = []
            for face, glyph in zip(faces, glyphs):
                advance = ctypes.c_long()
                ft.FT_Get_Advance(face, glyph, NO_SCALE, ctypes.byref(advance))
                advances.append(advance.value)
            print(code, *advances)
    return 0


if __name__ == "__main__":
    sys.exit(main())
