#pragma once
// One box for everything: machines, addresses, segments, findings, exercises, and what the program can do.

#include "core/analyse/analyse.h"

namespace snug {

// What can be found. In the order in which equals are listed.
enum class Findable : std::uint8_t {
  machine,
  segment,
  address,
  service, // that somebody gives: DHCP on a segment, names
  store,
  exercise,
  action,
  finding,
  word // of the program's help
};

struct FindItem {
  Findable kind = Findable::machine;
  std::string title;     // what it is called: "beacon", "172.22.10.10", "Undo"
  std::string detail;    // beside it: "Directory server on study PC"
  AnyId id;              // where it is; none for actions and words
  std::size_t place = 0; // finding: in Analysis::findings(); action: in the list that was handed in; word: in
                         // text::kHelpWords
};

struct FindAction {
  std::string title;
  std::string detail; // its menu and keys
};

// Everything of a lab that has a name or a number, the services in it, the actions and the words of the help.
std::vector<FindItem> find_items(const Analysis&, std::span<const FindAction> actions);

// Looks for words at any place of title and detail, whatever their case; each of them must occur.
class Finder {
 public:
  // `fold` makes texts comparable, e.g. to lower case.
  using Fold = std::string (*)(std::string_view);
  Finder(std::vector<FindItem> items, Fold fold);
  const std::vector<FindItem>& items() const { return items_; }
  // Places in items(), the best first: whole titles, then beginnings, beginnings of a word, any place; titles
  // before details. Nothing typed: nothing found.
  std::vector<std::size_t> find(std::string_view typed, std::size_t most) const;

 private:
  struct Keys {
    std::string title, detail;
  };
  std::vector<FindItem> items_;
  std::vector<Keys> keys_; // folded
  Fold fold_;
};

} // namespace snug
