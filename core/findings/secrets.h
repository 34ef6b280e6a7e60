#pragma once
// Notes that look like they hold a password or a key (MODEL: Secrets).

#include <string_view>

namespace snug {

// True for a word like "password" or "token" followed by ':' or '=' and a value, for the head of a private
// key, for a licence key in groups, and for long runs of mixed letters and digits. A sentence that says where
// something is kept is none ("password: see the blue folder").
bool looks_secret(std::string_view text);

} // namespace snug
