#pragma once
// Reach for each exercise of a lab, made when it is first asked for.

#include "core/reach/need_list.h"
#include "core/reach/reach.h"

#include <memory>

namespace snug {

class ReachByExercise {
 public:
  ReachByExercise(const Index& index, const AddressesInUse& addresses)
      : index_(&index), addresses_(&addresses), reach_(1 + index.lab().exercises.size()),
        running_(reach_.size()) {}
  // 0: everything on; then the exercises in the lab's order.
  std::size_t occasions() const { return reach_.size(); }
  Reach& at(std::size_t occasion);
  // Found when they are first asked for.
  std::span<const ListedNeed> needs();

 private:
  const Index* index_;
  const AddressesInUse* addresses_;
  std::vector<std::unique_ptr<Reach>> reach_;
  std::vector<std::vector<std::uint8_t>> running_; // of those that are made
  std::optional<std::vector<ListedNeed>> needs_;
};

} // namespace snug
