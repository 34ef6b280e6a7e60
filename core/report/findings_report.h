#pragma once
// Findings and budgets as text, Markdown and JSON: what `snuglab-cli check` writes.

#include "core/analyse/analyse.h"

namespace snug {

struct ReportChoice {
  ExerciseId exercise;         // none: everything on
  bool every_exercise = false; // all of them, everything on first
};

// Plain text, lines up to about 100 characters, for a terminal or a file.
std::string findings_text(const Analysis&, const ReportChoice&);
// The same as a Markdown document with a table exercise by verdict.
std::string findings_markdown(const Analysis&);
// DECISIONS 20; with every_exercise a list of such objects.
std::string findings_json(const Analysis&, const ReportChoice&);
// "2 errors, 1 caution, 3 notes": findings of that exercise that are not accepted.
std::string findings_summary(const Analysis&, const ReportChoice&);

} // namespace snug
