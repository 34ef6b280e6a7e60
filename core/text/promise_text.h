#pragma once
// Sentences about promises, needs and the ways that packets take.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template promise_broken{"promise-broken", "{0} does not reach {1}{2}, as promised"};
inline constexpr Template promise_chance{"promise-chance",
                                         "{0} reaches {1}{2} only by chance; it was promised"};
inline constexpr Template isolation_broken{"isolation-broken",
                                           "{0} reaches {1}{2}, and was promised never to"};
inline constexpr Template isolation_one_way{
    "isolation-one-way",
    "Packets from {0} arrive at {1}{2}, and were promised never to; answers do not return"};
inline constexpr Template isolation_why{
    "isolation-why", "The way: {0}. Cut it at one of them: the route, the forwarding or the card."};
inline constexpr Template need_unreachable{"need-unreachable",
                                           "{0} needs {1} from {2} and does not reach it"};
inline constexpr Template need_chance{"need-chance", "{0} gets {1} from {2} only by chance"};
inline constexpr Template need_nobody{"need-nobody", "{0} needs {1}, and no machine offers it"};
inline constexpr Template need_nobody_why{"need-nobody-why",
                                          "Add a machine whose role offers {0}, or take the need away."};
inline constexpr Template need_not_offered{"need-not-offered",
                                           "{0} needs {1} from {2}, which does not offer it"};
inline constexpr Template need_not_offered_why{
    "need-not-offered-why", "Add {0} to what {1} offers, or take it from another machine."};
inline constexpr Template path_asymmetric{"path-asymmetric",
                                          "Answers from {1} to {0} take another way than the questions"};
inline constexpr Template path_asymmetric_why{
    "path-asymmetric-why",
    "There by {0}, back by {1}. A filter or translation on one of the ways will see half of the talk."};
inline constexpr Template path_direct{"path-direct", "nobody between"};
inline constexpr Template pc_forwards{"pc-forwards", "{0} forwards between its sockets on {1}"};
inline constexpr Template pc_forwards_why{
    "pc-forwards-why",
    "Segments that are meant to be apart are joined by the PC itself. Switch forwarding off on the PC."};
inline constexpr Template fix_pc_forwards{"fix-pc-forwards", "Say that {0} does not forward"};
inline constexpr Template storage_outside{"storage-outside",
                                          "Storage traffic of {0} shares {1} with the outside"};
inline constexpr Template migration_outside{"migration-outside",
                                            "Migration traffic of {0} shares {1} with the outside"};
inline constexpr Template storage_outside_why{"storage-outside-why",
                                              "It is not encrypted and takes the room of everybody else "
                                              "there. Give it an isolated segment of its own."};
inline constexpr Template by_service{"by-service", " on {0} {1}"};

} // namespace snug::text
