#pragma once
// Sentences about the two size sets of roles.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template sizes_lean{"sizes-lean", "lean"};
inline constexpr Template sizes_current{"sizes-current", "current"};
inline constexpr Template sizes_differ{
    "sizes-differ", "the lab uses {1} sizes, and {0} machines have the usual {2} size, {3} for one",
    "the lab uses {1} sizes, and {3} has the usual {2} size"};
inline constexpr Template sizes_differ_why{
    "sizes-differ-why",
    "The size set of a lab is what new machines get; those that are there stay as they are."};
inline constexpr Template fix_usual_sizes{"fix-usual-sizes", "Give {0} machines their usual {1} size",
                                          "Give {0} machine its usual {1} size"};
inline constexpr Template fix_least_sizes{"fix-least-sizes",
                                          "Make {0} machines as small as their roles allow",
                                          "Make {0} machine as small as its role allows"};
inline constexpr Template fix_lean_sizes{"fix-lean-sizes", "Use lean sizes: {0} machines get smaller",
                                         "Use lean sizes: {0} machine gets smaller"};
inline constexpr Template fix_lean_least{"fix-lean-least", "Make {0} machines as small as lean systems allow",
                                         "Make {0} machine as small as a lean system allows"};

} // namespace snug::text
