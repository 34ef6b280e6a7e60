#pragma once
// Who holds an address where.

#include "core/model/columns.h"

namespace snug {

enum class Holder : std::uint8_t { card, pc_socket, translator, lan_router };

struct HeldAddress {
  Address address;
  std::int16_t length = 0; // prefix length there: as typed, else the segment's; 0: neither
  Holder holder = Holder::card;
  AddressKind kind = AddressKind::typed; // suggested: it may move
  std::uint8_t marks = 0;                // HeldMark
  std::uint16_t row = 0;                 // which of the card's addresses
  std::uint32_t segment = kNowhere;      // place in lab.segments
  std::uint32_t card = kNowhere;         // place in lab.cards, for cards
  std::uint32_t domain = kNowhere;       // layer-2 network; kNowhere: alone
};

// What an address is in its segment.
struct HeldMark {
  static constexpr std::uint8_t outside = 1;      // not in the segment's prefix of its family
  static constexpr std::uint8_t no_prefix = 2;    // the segment has none of its family
  static constexpr std::uint8_t reserved = 4;     // network or broadcast address (not on /31, /32: RFC 3021)
  static constexpr std::uint8_t other_length = 8; // typed length differs from the segment's
  static constexpr std::uint8_t link_local = 16;  // never marked outside
};

// Addresses one after the other; each is put together when somebody looks at it. `Source` has
// held(place) and outlives the list.
template <typename Source>
class HeldList {
 public:
  class Iterator {
   public:
    using iterator_category = std::random_access_iterator_tag;
    using value_type = HeldAddress;
    using difference_type = std::ptrdiff_t;
    using pointer = void;          // NOLINT(readability-identifier-naming): the name that std asks for
    using reference = HeldAddress; // NOLINT(readability-identifier-naming): the same

    Iterator() = default;
    Iterator(const Source* source, std::uint32_t place) : source_(source), place_(place) {}
    HeldAddress operator*() const { return source_->held(place_); }
    Iterator& operator++() { return *this += 1; }
    Iterator operator++(int) {
      const Iterator before = *this;
      ++*this;
      return before;
    }
    Iterator& operator--() { return *this += -1; }
    Iterator& operator+=(difference_type n) {
      place_ = static_cast<std::uint32_t>(place_ + n);
      return *this;
    }
    friend Iterator operator+(Iterator i, difference_type n) { return i += n; }
    friend difference_type operator-(const Iterator& a, const Iterator& b) {
      return difference_type{a.place_} - difference_type{b.place_};
    }
    friend bool operator==(const Iterator& a, const Iterator& b) { return a.place_ == b.place_; }

   private:
    const Source* source_ = nullptr;
    std::uint32_t place_ = 0;
  };

  HeldList(const Source* source, std::uint32_t first, std::uint32_t end)
      : source_(source), first_(first), end_(end) {}
  Iterator begin() const { return {source_, first_}; }
  Iterator end() const { return {source_, end_}; }
  std::size_t size() const { return end_ - first_; }
  bool empty() const { return first_ == end_; }
  HeldAddress operator[](std::size_t n) const {
    return source_->held(first_ + static_cast<std::uint32_t>(n));
  }
  HeldAddress front() const { return (*this)[0]; }
  // Of the whole list of the source.
  std::uint32_t first_place() const { return first_; }
  HeldList part(std::uint32_t first, std::uint32_t count) const {
    return {source_, first_ + first, first_ + first + count};
  }

 private:
  const Source* source_;
  std::uint32_t first_, end_;
};

} // namespace snug
