#pragma once
// Host and domain names: RFC 952, 1123 2.1 (letters, digits, hyphen), lengths of RFC 1035 2.3.4.

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace snug {

// Nothing when the label is a valid host name label: 1…63 letters, digits and hyphens, no hyphen at an end.
// All digits are allowed (RFC 1123 2.1). Else a sentence that names the character and its code point.
Result<void> check_host_label(std::string_view);
// Labels joined by dots, at most 253 characters without the final dot. A final dot is allowed. The last
// label is not all digits, so that no name can be taken for an address (RFC 1123 2.1).
Result<void> check_domain_name(std::string_view);
// Compares without regard to ASCII case (RFC 4343).
bool same_name(std::string_view, std::string_view);
// A valid label made from any text, deterministic: lower case, everything but letters and digits to single
// hyphens, cut to 63; "machine" when nothing is left.
std::string host_label_from(std::string_view free_text);
// The following take a domain or a name in it, in any case, with or without a final dot.
// True for names under a reserved top-level domain that never reach the public DNS: home.arpa (RFC 8375),
// test (RFC 6761).
bool is_offered_private_domain(std::string_view);
// True under .local (RFC 6762), which multicast DNS claims.
bool is_multicast_dns_domain(std::string_view);
// True for localhost and names under it, which mean the machine itself (RFC 6761 6.3).
bool is_localhost_name(std::string_view);
// True under example, example.com, example.net and example.org, which are for documents (RFC 2606).
bool is_documentation_domain(std::string_view);

} // namespace snug
