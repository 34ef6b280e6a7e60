#include "core/report/finder.h"

#include "core/text/find_text.h"
#include "core/text/help_text.h"

#include <algorithm>
#include <optional>

namespace snug {

namespace {

class Collector {
 public:
  explicit Collector(const Analysis& a) : a_(a), lab_(a.lab()), index_(a.index()) {}

  std::vector<FindItem> run(std::span<const FindAction> actions);

 private:
  std::string name(AnyId id) const { return name_of(lab_, id); }
  void add(Findable kind, std::string title, std::string detail, AnyId id) {
    out_.push_back({kind, std::move(title), std::move(detail), id, 0});
  }

  std::string machine_detail(const Machine& m) const;
  std::string segment_detail(const Segment& s) const;
  void add_addresses();
  AnyId holder(const HeldAddress& h) const;
  void add_dhcp();
  std::string dhcp_on(DhcpDuty duty, SegmentId segment) const;
  void add_offers();
  void add_stores();

  const Analysis& a_;
  const Lab& lab_;
  const Index& index_;
  std::vector<FindItem> out_;
};

std::vector<FindItem> Collector::run(std::span<const FindAction> actions) {
  for (const Machine& m : lab_.machines) add(Findable::machine, name(m.id), machine_detail(m), m.id);
  for (const Segment& s : lab_.segments) add(Findable::segment, name(s.id), segment_detail(s), s.id);
  add_addresses();
  add_dhcp();
  add_offers();
  for (const Exercise& e : lab_.exercises)
    add(Findable::exercise, name(e.id), english(say(text::find_exercise)), e.id);
  add_stores();
  for (const FindAction& x : actions) {
    add(Findable::action, x.title, x.detail, {});
    out_.back().place = static_cast<std::size_t>(&x - actions.data());
  }
  for (const Finding& f : a_.findings()) {
    add(Findable::finding, english(f.message), english(say(text::find_finding)),
        f.places.empty() ? AnyId{} : f.places.front());
    out_.back().place = static_cast<std::size_t>(&f - a_.findings().data());
  }
  for (std::size_t i = 0; i < text::kHelpWords.size(); ++i) {
    add(Findable::word, english(say(text::kHelpWords[i].word)), english(say(text::find_word)), {});
    out_.back().place = i;
  }
  return std::move(out_);
}

std::string Collector::machine_detail(const Machine& m) const {
  const Role* role = index_.role(m.role);
  const std::string carrier = name(m.carrier ? AnyId(m.carrier) : AnyId{Kind::pc, 0});
  return english(role ? say(text::find_machine, role->title, carrier) : say(text::find_on, carrier));
}

std::string Collector::segment_detail(const Segment& s) const {
  const std::uint32_t place = index_.place(s.id);
  std::string prefixes;
  for (const auto& p : {a_.addresses().prefix4(place), a_.addresses().prefix6(place)})
    if (p) prefixes += (prefixes.empty() ? "" : " ") + to_text(*p);
  return english(prefixes.empty() ? say(text::find_segment) : say(text::find_segment_prefix, prefixes));
}

void Collector::add_addresses() {
  for (const HeldAddress& h : a_.addresses().all()) {
    const std::string segment = h.segment == kNowhere ? std::string() : name(lab_.segments[h.segment].id);
    const AnyId id = holder(h);
    const std::string who = name(h.holder == Holder::card ? AnyId(lab_.cards[h.card].machine) : id);
    add(Findable::address, to_text(h.address),
        english(segment.empty() ? say(text::find_address, who) : say(text::find_address_on, who, segment)),
        id);
  }
}

AnyId Collector::holder(const HeldAddress& h) const {
  switch (h.holder) {
  case Holder::card:
    return lab_.cards[h.card].id;
  case Holder::pc_socket:
    return {Kind::pc, 0};
  case Holder::translator:
    return lab_.segments[h.segment].id;
  case Holder::lan_router:
    return lab_.segments[h.segment].lan;
  }
  return {};
}

// Who gives addresses, and who asks for one.
void Collector::add_dhcp() {
  const auto asks = [](const CardAddress& row) { return row.kind == AddressKind::dhcp; };
  for (const Card& c : lab_.cards) {
    if (c.dhcp != DhcpDuty::none)
      add(Findable::service, dhcp_on(c.dhcp, c.segment), english(say(text::find_service, name(c.machine))),
          c.id);
    if (c.segment && std::any_of(c.addresses.begin(), c.addresses.end(), asks))
      add(Findable::service, english(say(text::find_asks, name(c.machine), name(c.segment))),
          english(say(text::find_card)), c.id);
  }
  for (const Segment& s : lab_.segments)
    if (s.type == SegmentKind::nat && s.translator_dhcp)
      add(Findable::service, dhcp_on(DhcpDuty::server, s.id), english(say(text::find_translator)), s.id);
}

std::string Collector::dhcp_on(DhcpDuty duty, SegmentId segment) const {
  const bool relay = duty == DhcpDuty::relay;
  if (!segment) return english(say(relay ? text::find_relay : text::find_dhcp));
  return english(say(relay ? text::find_relay_on : text::find_dhcp_on, name(segment)));
}

// Of the machine and of its role, each once.
void Collector::add_offers() {
  for (const Machine& m : lab_.machines) {
    std::vector<std::string_view> done;
    const auto add_all = [&](const std::vector<Offer>& offers) {
      for (const Offer& o : offers) {
        if (std::find(done.begin(), done.end(), o.service) != done.end()) continue;
        done.push_back(o.service);
        add(Findable::service, english(say(text::find_offer, o.service, name(m.id))),
            english(say(text::find_service, name(m.id))), m.id);
      }
    };
    add_all(m.offers);
    if (const Role* role = index_.role(m.role)) add_all(role->offers);
  }
}

void Collector::add_stores() {
  const auto add_all = [this](const auto& list) {
    for (const auto& x : list) add(Findable::store, name(x.id), english(say(text::find_store)), x.id);
  };
  add_all(lab_.volumes);
  add_all(lab_.shares);
  for (const Lan& l : lab_.lans) add(Findable::store, name(l.id), english(say(text::find_lan)), l.id);
}

std::vector<std::string_view> split(std::string_view typed) {
  std::vector<std::string_view> words;
  while (!typed.empty()) {
    const std::size_t end = std::min(typed.find(' '), typed.size());
    if (end > 0) words.push_back(typed.substr(0, end));
    typed.remove_prefix(std::min(end + 1, typed.size()));
  }
  return words;
}

// A letter or digit before it makes it the middle of a word. Dots and colons part addresses.
bool begins_word(std::string_view text, std::size_t at) {
  constexpr std::string_view kBetween = " .:-_/,;()[]\"'";
  return at == 0 || kBetween.find(text[at - 1]) != std::string_view::npos;
}

constexpr int kTitle = 0, kStart = 1, kWord = 2, kInside = 3, kDetail = 4;

// The best place of a word; none: it does not occur.
std::optional<int> rank(std::string_view title, std::string_view detail, std::string_view word) {
  if (title == word) return kTitle;
  if (title.starts_with(word)) return kStart;
  const auto best = [word](std::string_view text, int at_word, int inside) {
    std::optional<int> found;
    for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
      if (begins_word(text, at)) return std::optional(at_word);
      found = inside;
    }
    return found;
  };
  if (const auto in_title = best(title, kWord, kInside)) return in_title;
  return best(detail, kDetail, kDetail + 1);
}

} // namespace

std::vector<FindItem> find_items(const Analysis& a, std::span<const FindAction> actions) {
  return Collector(a).run(actions);
}

Finder::Finder(std::vector<FindItem> items, Fold fold) : items_(std::move(items)), fold_(fold) {
  keys_.reserve(items_.size());
  for (const FindItem& i : items_) keys_.push_back({fold_(i.title), fold_(i.detail)});
}

std::vector<std::size_t> Finder::find(std::string_view typed, std::size_t most) const {
  const std::string folded = fold_(typed);
  const std::vector<std::string_view> words = split(folded);
  if (words.empty()) return {};
  struct Hit {
    int rank;
    std::size_t length, place;
  };
  std::vector<Hit> hits;
  for (std::size_t i = 0; i < keys_.size(); ++i) {
    Hit hit{0, keys_[i].title.size(), i};
    const bool all = std::all_of(words.begin(), words.end(), [&](std::string_view w) {
      const auto r = rank(keys_[i].title, keys_[i].detail, w);
      hit.rank += r.value_or(0);
      return r.has_value();
    });
    if (all) hits.push_back(hit);
  }
  const auto is_better = [this](const Hit& a, const Hit& b) {
    const bool help_a = items_[a.place].kind == Findable::word,
               help_b = items_[b.place].kind == Findable::word;
    if (help_a != help_b) return help_b; // what is in the lab comes first
    if (a.rank != b.rank) return a.rank < b.rank;
    if (items_[a.place].kind != items_[b.place].kind) return items_[a.place].kind < items_[b.place].kind;
    if (a.length != b.length) return a.length < b.length;
    return a.place < b.place;
  };
  const std::size_t count = std::min(most, hits.size());
  std::partial_sort(hits.begin(), hits.begin() + static_cast<std::ptrdiff_t>(count), hits.end(), is_better);
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < count; ++i) out.push_back(hits[i].place);
  return out;
}

} // namespace snug
