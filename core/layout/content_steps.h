#pragma once
// How Content is read from an analysis, step by step.

#include "core/layout/content.h"

#include <unordered_map>

namespace snug::layout {

struct Source {
  const Analysis& analysis;
  const Lab& lab;
  const DrawOptions& options;
  Before* before = nullptr;
  bool ruler_only = false; // names and what is taken, no other words
};

// An address as the drawing shows it on a segment: whole, or what differs within the segment's prefix.
std::string shown(const Source&, std::uint32_t segment_place, const Address&);

void read_lans(const Source&, Content&);
void read_rails(const Source&, Content&); // after read_lans
// Place in Content::lans; adds one without id for segments that do not say where they lead.
std::uint32_t lan_of(const Source&, LanId, Content&);

// After read_rails; with or without the guests of hypervisors. What is kept has its plugs already.
void read_machines(const Source&, Content&, bool inner = true);
void read_plugs(const Source&, Content&);  // after read_machines
void read_memory(const Source&, Content&); // after read_machines
void read_marks(const Source&, Content&);  // after all the others
void measure(Content&);                    // what has not been measured yet; after read_memory

// The words in marks of duties, as drawn; pixels that all of a plug's marks take, 0: none.
std::vector<std::pair<Part, std::string>> duties_of(const Plug&, const DrawOptions&);
int duties_width(const Plug&, const DrawOptions&);
inline constexpr int kDutyPad = 4, kDutyGap = 4; // inside a mark, before it

// Place in Content::machines by place in lab.machines.
std::vector<std::uint32_t> drawn_places(const Source&, const Content&);

} // namespace snug::layout
