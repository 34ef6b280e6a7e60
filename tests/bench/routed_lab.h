#pragma once
// A large lab of routed networks: trees of segments, a router between each and the next one up, hosts of one
// card. Every eighth machine has a card on two segments; some of them do not forward.

#include "core/model/lab.h"

#include <cstddef>

namespace snug::bench {

// At least 100 machines, one segment for eleven of them; two trees that nothing joins.
Lab routed_lab(std::size_t machines);

} // namespace snug::bench
