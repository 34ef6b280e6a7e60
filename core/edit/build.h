#pragma once
// Builds edits against a lab. Steps are recorded in the order they are made; each sees those before it.

#include "core/edit/edit.h"

namespace snug {

// Collects an edit on a working copy of a lab. Nothing reaches the lab itself; take() gives the edit.
class EditBuilder {
 public:
  explicit EditBuilder(const Lab& lab) : lab_(lab) {}

  const Lab& lab() const { return lab_; } // with the steps so far
  // No step when the field has this value already. Asserts that the element and the field exist.
  void set(AnyId id, std::string_view key, Value value);
  // Gives `e` the next id of the lab, adds it at the end of its list (or before `place`), returns its id.
  template <typename E>
  Id<E::kind> add(E e, std::optional<std::size_t> place = std::nullopt) {
    return Id<E::kind>{add_element(AnyElement(std::move(e)), place).number};
  }
  AnyId add_element(AnyElement e, std::optional<std::size_t> place = std::nullopt);
  // Removes an element and what cannot be without it (OnRemoval::follow: a machine's cards, disks, shares and
  // inner guests, promises about it); clears or shortens every other reference to it.
  void remove(AnyId id);
  void remove(std::span<const AnyId> ids); // together
  // Moves an element to another place of its list.
  void move_to(AnyId id, std::size_t place);

  Edit take(Message label) &&;

 private:
  void step(Primitive p);
  Lab lab_;
  std::vector<Primitive> steps_;
};

// The commonest edits.
Edit set_field(const Lab&, AnyId id, std::string_view key, Value value); // label: "Change memory of deck-a"
Edit remove_elements(const Lab&, std::span<const AnyId> ids);            // label: "Remove deck-a"

} // namespace snug
