#pragma once
// Sentences about ids and general values.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template id_form{
    "id-form", "\"{0}\" is not an id: ids are a kind's letter and a number without leading zeros, "
               "like m12 for a machine or s3 for a segment"};
inline constexpr Template plain{"plain", "{0}"};

} // namespace snug::text
