#pragma once
// Sentences about names and time.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template host_name_twice{"host-name-twice", "{0} and {1} are both named {2}"};
inline constexpr Template host_name_twice_why{
    "host-name-twice-why",
    "Letter case does not count in names (RFC 4343). One of the two is found under the "
    "other's name. Rename one."};
inline constexpr Template host_name_form{"host-name-form", "the host name of {0} is \"{1}\", which is none"};
inline constexpr Template fix_host_name{"fix-host-name", "Name {0} {1}"};

inline constexpr Template domain_local{"domain-local", "the lab's domain {0} is under .local"};
inline constexpr Template domain_local_why{
    "domain-local-why", "Multicast DNS claims .local (RFC 6762): some systems will not ask the lab's name "
                        "server. home.arpa (RFC 8375) and test (RFC 6761) are private for ever."};
inline constexpr Template domain_case{"domain-case", "the lab's domain {0} has capital letters"};
inline constexpr Template domain_case_why{
    "domain-case-why", "Case does not count in names, but some programs compare it. Write small letters."};
inline constexpr Template domain_form{"domain-form", "the lab's domain \"{0}\" is none"};
inline constexpr Template domain_missing{"domain-missing", "the lab has no domain"};
inline constexpr Template domain_missing_why{
    "domain-missing-why",
    "Directory and management servers need full names. home.arpa (RFC 8375) and test (RFC "
    "6761) are private for ever."};
inline constexpr Template domain_localhost{"domain-localhost",
                                           "the lab's domain {0} means the machine itself"};
inline constexpr Template domain_localhost_why{"domain-localhost-why",
                                               "Names under localhost never leave a machine (RFC 6761 6.3)."};
inline constexpr Template fix_domain{"fix-domain", "Use {0}"};

inline constexpr Template published_twice{"published-twice", "{0} is published in names on {1} segments"};
inline constexpr Template published_twice_why{
    "published-twice-why",
    "Clients get both addresses and try one they may not reach. Publish the segment its "
    "clients are on, and switch names off on the other cards."};
inline constexpr Template fix_publish_one{"fix-publish-one", "Publish {0} on {1} only"};
inline constexpr Template unpublished{"unpublished",
                                      "{0} wants forward and reverse names before it is installed, and none "
                                      "of its cards is published with a fixed address"};
inline constexpr Template unpublished_why{
    "unpublished-why", "Its installer looks its own name up in both directions. Publish the card with its "
                       "fixed address for management."};
inline constexpr Template no_name_server{"no-name-server",
                                         "nobody in the lab offers names, and {0} needs them"};
inline constexpr Template no_name_server_why{"no-name-server-why",
                                             "Add a name server, or let a directory server offer names."};
inline constexpr Template pc_names_no{"pc-names-no", "the PC does not resolve the lab's names"};
inline constexpr Template pc_names_unknown{"pc-names-unknown",
                                           "nobody looked whether the PC resolves the lab's names"};
inline constexpr Template pc_names_why{
    "pc-names-why",
    "Consoles and pages of the lab are opened by name. Point the PC at {0} for {1}, or enter the "
    "names in its hosts file. To find out, look one name up."};

inline constexpr Template time_two_sources{"time-two-sources",
                                           "{0} takes the time from its carrier and from the network"};
inline constexpr Template time_two_sources_why{
    "time-two-sources-why", "The two pull its clock to and fro. Keep the network's; above five minutes of "
                            "difference logins fail (RFC 4120 practice)."};
inline constexpr Template fix_network_time{"fix-network-time", "Switch carrier time off on {0}"};
inline constexpr Template time_loop{"time-loop", "{0} take the time from each other"};
inline constexpr Template time_loop_self{"time-loop-self", "{0} takes the time from itself"};
inline constexpr Template time_loop_why{
    "time-loop-why",
    "Time needs one root: a loop follows its own errors. Let one of them take it from elsewhere."};
inline constexpr Template time_no_source{"time-no-source", "nobody in the lab offers the time"};
inline constexpr Template time_no_source_why{
    "time-no-source-why", "Clocks drift apart; above five minutes logins fail (RFC 4120 practice). Let one "
                          "machine offer the time to all others."};
inline constexpr Template time_not_offered{"time-not-offered",
                                           "{0} takes the time from {1}, which does not offer it"};
inline constexpr Template time_not_offered_why{
    "time-not-offered-why", "Add the offer \"time\" there, or take it from a machine that has it."};
inline constexpr Template fix_offer_time{"fix-offer-time", "Let {0} offer the time"};
inline constexpr Template time_roots{"time-roots", "{0} roots of time: {1}"};
inline constexpr Template time_roots_why{
    "time-roots-why",
    "Time is a tree with one root, else parts of the lab drift apart. Let the others take it "
    "from the first."};

} // namespace snug::text
