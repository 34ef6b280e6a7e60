#include "core/document/migrate.h"

#include "core/text/document_text.h"

#include <algorithm>

namespace snug {

std::span<const Migration> migrations() { return {}; }

Result<std::string> migrate(std::string_view bytes, std::int64_t from, std::int64_t to,
                            std::span<const Migration> steps, std::vector<Message>& notes) {
  auto document = nlohmann::ordered_json::parse(bytes);
  for (std::int64_t version = from; version < to; ++version) {
    const auto step =
        std::find_if(steps.begin(), steps.end(), [version](const Migration& m) { return m.from == version; });
    if (step == steps.end()) return fail(text::document_older, Count{version});
    step->apply(document, notes);
    document["version"] = version + 1;
  }
  notes.push_back(say(text::document_migrated, Count{from}, Count{to}));
  return document.dump();
}

} // namespace snug
