#pragma once
// Edits as JSON text, exact: core/document/read_edit.h reads them back. The journal and `check --json` share
// it.

#include "core/edit/edit.h"

#include <string>

namespace snug {

// A list of steps on one line, each an object: {"set": "m12", "field": "memory", "before": 1024, "after":
// 2048}, {"set": "m12", "unknown": {"before": {…}, "after": {…}}}, {"insert": {element}, "place": 3},
// {"remove": {element}, "place": 3}. Values and elements stand as in a document.
void append_steps(std::string& out, const Edit& e);
// {"label": "Change memory of deck-a", "edits": [steps]}; the label in English.
void append_edit(std::string& out, const Edit& e);

} // namespace snug
