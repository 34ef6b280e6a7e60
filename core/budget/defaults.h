#pragma once
// What holds where the person did not type a value. Common practice, no published source.

#include "core/model/pc.h"

namespace snug {

// Memory of the PC's own system and programs: 4 GiB up to 16 GiB installed, 6 below 64, 8 from 64.
std::int64_t usual_reserve(std::int64_t installed_mib);
// Below this much headroom a PC is tight: 1 GiB up to 16 GiB installed, else 2.
std::int64_t usual_keep_free(std::int64_t installed_mib);

// As typed, else as usual; MiB.
std::int64_t usable(const Pc&);
std::int64_t reserved(const Pc&);
std::int64_t keep_free(const Pc&);

} // namespace snug
