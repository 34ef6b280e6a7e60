#include "core/base/clean.h"
#include "core/layout/content_steps.h"
#include "core/text/layout_text.h"

namespace snug::layout {

namespace {

// What carries the badge for a place: cards, disks and shares show on their machine, volumes on the PC.
AnyId bearer(const Index& index, AnyId place) {
  switch (place.kind) {
  case Kind::card:
    if (const Card* card = index.card(CardId{place.number})) return card->machine;
    return {};
  case Kind::disk:
    if (const Disk* disk = index.disk(DiskId{place.number})) return disk->machine;
    return {};
  case Kind::share:
    if (const Share* share = index.share(ShareId{place.number})) return share->machine;
    return {};
  case Kind::volume:
    return AnyId{Kind::pc, 0};
  default:
    return place;
  }
}

// Sentences are for those who read descriptions.
void join(Mark& mark, const Finding& finding, const DrawOptions& o) {
  if (!mark.any || finding.severity < mark.severity) mark.severity = finding.severity;
  mark.any = true;
  ++mark.count;
  if (!o.describe) return;
  const Template& words = finding.severity == Severity::error     ? text::layout_error
                          : finding.severity == Severity::caution ? text::layout_caution
                                                                  : text::layout_note;
  mark.words += (mark.words.empty() ? "" : "\n") + clean(o.words(say(words, finding.message)));
}

} // namespace

void read_marks(const Source& source, Content& content) {
  std::unordered_map<AnyId, Mark> marks;
  for (const Finding& finding : source.analysis.findings()) {
    if (finding.accepted != nullptr || !holds_in(source.lab, finding, source.options.exercise)) continue;
    std::vector<AnyId> done;
    for (const AnyId place : finding.places) {
      const AnyId at = bearer(source.analysis.index(), place);
      if (!at || std::find(done.begin(), done.end(), at) != done.end()) continue;
      done.push_back(at);
      join(marks[at], finding, source.options);
    }
  }
  const auto give = [&content](Mark& mark, std::string& description, const Mark& found) {
    mark = found;
    content.any_mark = true;
    if (!mark.words.empty()) description += (description.empty() ? "" : "\n") + mark.words;
  };
  const auto look = [&](AnyId id, Mark& mark, std::string& description) {
    if (const auto found = marks.find(id); id && found != marks.end()) give(mark, description, found->second);
  };
  const std::vector<std::uint32_t> drawn = drawn_places(source, content);
  for (const auto& [id, mark] : marks) {
    const std::uint32_t place = id.kind == Kind::machine ? source.analysis.index().place(id) : kNowhere;
    if (place == kNowhere || drawn[place] == kNone) continue;
    MachineText& m = content.machines[drawn[place]];
    give(m.mark, m.description, mark);
  }
  for (RailText& r : content.rails) look(r.id, r.mark, r.description);
  for (LanText& l : content.lans) look(l.id, l.mark, l.description);
  std::string unused;
  look(AnyId{Kind::pc, 0}, content.pc_mark, unused);
}

} // namespace snug::layout
