#pragma once
// Sentences about addresses, prefixes, masks, MAC addresses and names that cannot be read.

#include "core/base/message.h"

namespace snug::text {

// Addresses
inline constexpr Template address_empty{"address-empty",
                                        "an address is missing: write one like 192.0.2.10 or 2001:db8::10"};
inline constexpr Template address_spaces{"address-spaces", "\"{0}\" has spaces around it: write {1}"};
inline constexpr Template address_has_length{
    "address-has-length", "\"{0}\" has a prefix length: only the address {1} belongs here"};
inline constexpr Template address_brackets{
    "address-brackets", "\"{0}\" has brackets, which are for an address with a port: write {1}"};
inline constexpr Template address_zone{"address-zone",
                                       "\"{0}\" names a zone (\"{1}\"): only the address {2} belongs here"};
inline constexpr Template address_port{"address-port",
                                       "\"{0}\" has a port: only the address {1} belongs here"};
inline constexpr Template address_name{
    "address-name", "\"{0}\" is not an address: write digits like 192.0.2.10 or 2001:db8::10, not a name"};
inline constexpr Template address_character{"address-character",
                                            "\"{0}\" is not an address: {1} does not belong in one"};
inline constexpr Template address4_parts{"address4-parts",
                                         "\"{0}\" has {1} numbers: an IPv4 address has four, like 192.0.2.10",
                                         "\"{0}\" has one number: an IPv4 address has four, like 192.0.2.10"};
inline constexpr Template address4_empty_part{
    "address4-empty-part",
    "\"{0}\" has a dot without a number beside it: an IPv4 address looks like 192.0.2.10"};
inline constexpr Template address4_octet{
    "address4-octet", "\"{0}\": {1} is too large, a number in an IPv4 address is at most 255"};
inline constexpr Template address4_zero{
    "address4-zero", "\"{0}\": {1} starts with a zero, which some programs read as octal: write {2}"};
inline constexpr Template address6_field{
    "address6-field", "\"{0}\": {1} has {2} digits, a field of an IPv6 address has one to four"};
inline constexpr Template address6_many{
    "address6-many", "\"{0}\" has {1} fields: an IPv6 address has eight, and \"::\" stands for at least one"};
inline constexpr Template address6_few{
    "address6-few",
    "\"{0}\" has {1} of the eight fields of an IPv6 address: write \"::\" once where zeros are left out",
    "\"{0}\" has one of the eight fields of an IPv6 address: write \"::\" once where zeros are left out"};
inline constexpr Template address6_twice{
    "address6-twice", "\"{0}\" has \"::\" more than once: it may stand for zeros only once"};
inline constexpr Template address6_colons{"address6-colons", "\"{0}\" has three colons in a row: write two"};
inline constexpr Template address6_edge{
    "address6-edge", "\"{0}\" starts or ends with a single colon: write \"::\" where zeros are left out"};
inline constexpr Template address6_dotted_place{
    "address6-dotted-place", "\"{0}\": the dotted part {1} may only stand at the end of an IPv6 address"};

// Prefixes and masks
inline constexpr Template prefix_empty{"prefix-empty",
                                       "a prefix is missing: write one like 10.0.0.0/24 or fd00::/64"};
inline constexpr Template prefix_no_length{"prefix-no-length",
                                           "\"{0}\" has no length: write it after a slash, like {0}/{1}"};
inline constexpr Template prefix_length_missing{
    "prefix-length-missing", "\"{0}\" has nothing after the slash: write the length, like {1}/{2}"};
inline constexpr Template prefix_length_form{
    "prefix-length-form", "\"{0}\": \"{1}\" is not a length: write a whole number from 0 to {2}"};
inline constexpr Template prefix_length_zero{"prefix-length-zero",
                                             "\"{0}\": the length {1} starts with a zero: write {2}"};
inline constexpr Template prefix_length_large{
    "prefix-length-large", "\"{0}\": the length {1} is too large: an {2} prefix has at most {3} bits"};
inline constexpr Template prefix_length_mask{"prefix-length-mask",
                                             "\"{0}\" has a mask after the slash: write {1}"};
inline constexpr Template prefix_host_bits{
    "prefix-host-bits", "\"{0}\" is an address inside a network: the network itself is {1}"};
inline constexpr Template mask_not_contiguous{
    "mask-not-contiguous",
    "\"{0}\" is not a mask: its ones must come first and its zeros last, like 255.255.255.0"};
inline constexpr Template mask_inverted{"mask-inverted", "\"{0}\" is a mask turned around: write {1}"};
inline constexpr Template mask_family{"mask-family",
                                      "\"{0}\" is an IPv6 address: a mask is written like 255.255.255.0"};

// Dividing prefixes
inline constexpr Template split_shorter{"split-shorter",
                                        "{0} cannot be divided into /{1} networks: they are larger than it"};
inline constexpr Template split_length{"split-length",
                                       "/{0} is no length of an {1} prefix: it is at most /{2}"};
inline constexpr Template split_many{"split-many",
                                     "{0} divided into /{1} networks gives more than {2} of them"};

// MAC addresses
inline constexpr Template mac_empty{"mac-empty",
                                    "a MAC address is missing: write one like 02:00:5e:00:53:01"};
inline constexpr Template mac_spaces{"mac-spaces", "\"{0}\" has spaces around it: write {1}"};
inline constexpr Template mac_character{
    "mac-character", "\"{0}\" is not a MAC address: {1} is neither a hexadecimal digit nor a separator"};
inline constexpr Template mac_mixed{"mac-mixed", "\"{0}\" mixes separators: write {1}"};
inline constexpr Template mac_short_octet{"mac-short-octet",
                                          "\"{0}\" leaves out zeros: write two digits everywhere, {1}"};
inline constexpr Template mac_eui64{
    "mac-eui64",
    "\"{0}\" has eight octets, which is an EUI-64: a MAC address has six, like 02:00:5e:00:53:01"};
inline constexpr Template mac_digits{
    "mac-digits", "\"{0}\" has {1} hexadecimal digits: a MAC address has twelve, like 02:00:5e:00:53:01",
    "\"{0}\" has one hexadecimal digit: a MAC address has twelve, like 02:00:5e:00:53:01"};
inline constexpr Template mac_groups{"mac-groups", "\"{0}\" groups its digits in another way: write {1}"};

// Host and domain names
inline constexpr Template label_empty{"label-empty", "a name is missing: write letters, digits and hyphens"};
inline constexpr Template label_long{"label-long",
                                     "\"{0}\" has {1} characters: a part of a name has at most 63"};
inline constexpr Template label_hyphen_first{
    "label-hyphen-first", "\"{0}\" starts with a hyphen: a name starts with a letter or a digit"};
inline constexpr Template label_hyphen_last{
    "label-hyphen-last", "\"{0}\" ends with a hyphen: a name ends with a letter or a digit"};
inline constexpr Template label_underscore{
    "label-underscore", "\"{0}\" has an underscore, which host names do not allow: write {1}"};
inline constexpr Template label_space{"label-space",
                                      "\"{0}\" has a space, which host names do not allow: write {1}"};
inline constexpr Template label_dot{
    "label-dot", "\"{0}\" has a dot, which separates the parts of a name: write one part, like {1}"};
inline constexpr Template label_character{
    "label-character", "\"{0}\": {1} is not allowed: a host name has the letters a to z, digits and hyphens"};
inline constexpr Template domain_long{"domain-long",
                                      "\"{0}\" has {1} characters: a whole name has at most 253"};
inline constexpr Template domain_empty_part{"domain-empty-part",
                                            "\"{0}\" has an empty part: dots separate the parts of a name"};
inline constexpr Template domain_numeric{
    "domain-numeric", "\"{0}\" ends in a part of digits only and could be taken for an address"};

} // namespace snug::text
