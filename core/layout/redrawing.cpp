#include "core/layout/content_steps.h"
#include "core/layout/draw_parts.h"

#include <algorithm>

namespace snug {

using layout::kNone;

struct Redrawing::Kept {
  layout::Before before;
  DrawOptions options;
  std::vector<std::uint32_t> drawn; // place in before.content, by place in lab.machines
};

namespace {

bool same_content(const DrawOptions& a, const DrawOptions& b) {
  return !a.describe && !b.describe && a.exercise == b.exercise && a.full_addresses == b.full_addresses &&
         a.inner_addresses == b.inner_addresses;
}

// What is there of the other kinds may be said of anything in a drawing.
bool is_said_of_one_machine(AnyId id) {
  return id.kind == Kind::machine || id.kind == Kind::card || id.kind == Kind::disk;
}

} // namespace

Redrawing::Redrawing() = default;
Redrawing::~Redrawing() = default;
void Redrawing::forget() { kept_.reset(); }

// Machines that a touched element belongs to, or belonged to, are made anew; what is gone belonged to one
// that is touched, or is gone with it.
void Redrawing::keep_what_is_untouched(const Index& index, std::span<const AnyId> touched) {
  const std::vector<Machine>& machines = index.lab().machines;
  layout::Before& before = kept_->before;
  const layout::MachineTexts& old = before.content.machines;
  for (std::uint32_t p = 0; p < machines.size() && p < kept_->drawn.size(); ++p)
    if (kept_->drawn[p] != kNone && old[kept_->drawn[p]].id == machines[p].id)
      before.as_it_was[p] = kept_->drawn[p];
  const auto change = [&](MachineId id) {
    if (const std::uint32_t p = index.place(id); p != kNowhere) before.as_it_was[p] = kNone;
  };
  std::vector<CardId> cards;
  for (const AnyId id : touched) {
    if (id.kind == Kind::machine) change(MachineId{id.number});
    if (id.kind == Kind::card) cards.push_back(CardId{id.number});
  }
  for (const CardId id : cards)
    if (const Card* card = index.card(id)) change(card->machine);
  if (cards.empty()) return;
  for (const layout::MachineText& m : old)
    if (std::any_of(m.plugs.begin(), m.plugs.end(), [&](const layout::Plug& plug) {
          return std::find(cards.begin(), cards.end(), plug.card) != cards.end();
        }))
      change(m.id);
}

Drawing Redrawing::draw(const Analysis& analysis, const DrawOptions& options,
                        std::span<const AnyId> touched) {
  if (!kept_) kept_ = std::make_unique<Kept>();
  layout::Before& before = kept_->before;
  before.as_it_was.assign(analysis.lab().machines.size(), kNone);
  before.rails_are_as_they_were = !kept_->drawn.empty() && same_content(kept_->options, options) &&
                                  std::all_of(touched.begin(), touched.end(), is_said_of_one_machine);
  if (before.rails_are_as_they_were) keep_what_is_untouched(analysis.index(), touched);
  before.made = 0;
  before.content = options.describe ? layout::content_of(analysis, options)
                                    : layout::content_of(analysis, options, before);
  made_ += options.describe ? static_cast<std::int64_t>(before.as_it_was.size()) : before.made;
  kept_->options = options;
  kept_->drawn = layout::drawn_places({analysis, analysis.lab(), options}, before.content);
  return layout::draw_content(before.content, options);
}

} // namespace snug
