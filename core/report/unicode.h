#pragma once
// What the escaping has to know of single characters (Unicode 15, UAX 9, UTR 36). For core/report only.

namespace snug {

// Space of any width or a mark that takes no room: a spreadsheet may skip it at the start of a cell.
bool is_blank(char32_t);
// = + - @ and their full-width, small and mathematical forms.
bool is_formula_start(char32_t);

// Letters that a file name may hold besides ASCII: none of them has a second spelling by canonical
// equivalence once U+0300 to 036F, U+3099 and U+309A are taken out (UAX 15).
bool is_file_letter(char32_t);
// One value for the upper and the lower case of a character of a file name. Folds rather too much than too
// little.
char32_t folded(char32_t);

} // namespace snug
