#pragma once
// Reading without sentences, writing in parts, and the sentences for what could not be read; used inside
// core/net.

#include "core/net/address.h"

#include <optional>
#include <string_view>

namespace snug {

bool is_ipv4_text(std::string_view);
std::optional<Address> read_address(std::string_view);
// A decimal number without sign or leading zeros, at most `most`.
std::optional<int> read_number(std::string_view, int most);
// Whether the last 32 bits of an IPv6 address may be written as an IPv4 address.
enum class Dotted : std::uint8_t { where_recommended, never };
void append_text(std::string&, const Address&, Dotted);
// Why read_address gave nothing for this text.
Problem address_problem(std::string_view);

} // namespace snug
