#pragma once
// What a drawing says of machines.

#include "core/budget/budget.h"
#include "core/findings/finding.h"

#include <iterator>
#include <memory>
#include <string>
#include <vector>

namespace snug::layout {

inline constexpr std::uint32_t kNone = 0xffff'ffff;

// The worst finding at an element.
struct Mark {
  bool any = false;
  Severity severity = Severity::note;
  int count = 0;
  std::string words; // the sentences, for a tooltip
};

// A connection of a card to a segment. Cards with a trunk, or that carry, have several.
struct Plug {
  CardId card;
  std::uint32_t rail = kNone; // none: not plugged
  bool hollow = false;        // only carries
  bool connected = true;
  bool joined = true; // an inner guest's: every carrier above carries the segment
  std::vector<std::string> lines;
  int lines_width = 0;                // pixels of the widest, with the marks of duties
  bool gateway = false, dhcp = false; // its duties on the segment; an inner guest's stand in the lines
};

struct Bar {
  std::int64_t part = 0;
  std::int64_t whole = 0; // 0: no bar
  Verdict verdict = Verdict::fits;
  friend bool operator==(const Bar&, const Bar&) = default;
};

struct MachineText {
  MachineId id;
  std::string name, role, memory, processors;
  std::string title, description;
  bool hypervisor = false;
  bool on = true;
  bool held = false; // a person keeps it in its place
  int band = 0;
  std::uint32_t carrier = kNone;     // place in Content::machines
  std::vector<std::uint32_t> guests; // in drawing order
  std::vector<Plug> plugs;           // ordered as the pins stand, left to right
  Bar bar;                           // memory expected to be used, or a hypervisor's inner budget
  std::string bar_text, room_text;   // hypervisors only
  bool room_over = false;
  std::int64_t room = -1;             // MiB that another guest could have
  std::int64_t takes = 0;             // MiB; 0 when off
  std::vector<std::uint32_t> carried; // rails that its guests reach
  int text_width = -1;                // pixels of the widest line on its card; below 0: not measured yet
  Mark mark;
};

// Each by itself: what is kept from one drawing to the next does not move.
class MachineTexts {
  using List = std::vector<std::unique_ptr<MachineText>>;
  template <typename At, typename Text>
  class Step {
   public:
    // NOLINTBEGIN(readability-identifier-naming): as std::iterator_traits wants them
    using iterator_category = std::forward_iterator_tag;
    using value_type = Text;
    using difference_type = std::ptrdiff_t;
    using reference = Text&;
    using pointer = Text*;
    // NOLINTEND(readability-identifier-naming)
    Step() = default;
    explicit Step(At at) : at_(at) {}
    Text& operator*() const { return **at_; }
    Text* operator->() const { return at_->get(); }
    Step& operator++() { return ++at_, *this; }
    Step operator++(int) { return Step(at_++); }
    friend bool operator==(const Step&, const Step&) = default;

   private:
    At at_{};
  };

 public:
  std::size_t size() const { return list_.size(); }
  bool empty() const { return list_.empty(); }
  void reserve(std::size_t n) { list_.reserve(n); }
  MachineText& operator[](std::size_t i) { return *list_[i]; }
  const MachineText& operator[](std::size_t i) const { return *list_[i]; }
  auto begin() { return Step<List::iterator, MachineText>(list_.begin()); }
  auto end() { return Step<List::iterator, MachineText>(list_.end()); }
  auto begin() const { return Step<List::const_iterator, const MachineText>(list_.begin()); }
  auto end() const { return Step<List::const_iterator, const MachineText>(list_.end()); }
  MachineText& add(std::unique_ptr<MachineText> m) { return *list_.emplace_back(std::move(m)); }
  std::unique_ptr<MachineText> take(std::size_t i) { return std::move(list_[i]); } // nothing is left there

 private:
  List list_;
};

} // namespace snug::layout
