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
inline constexpr Template fix_connect{"fix-connect", "Connect {0} to {1}"};
inline constexpr Template fix_default_route{"fix-default-route", "Give {0} a default route by {1}"};
inline constexpr Template storage_outside{"storage-outside",
                                          "Storage traffic of {0} shares {1} with the outside"};
inline constexpr Template migration_outside{"migration-outside",
                                            "Migration traffic of {0} shares {1} with the outside"};
inline constexpr Template storage_outside_why{"storage-outside-why",
                                              "It is not encrypted and takes the room of everybody else "
                                              "there. Give it an isolated segment of its own."};
inline constexpr Template by_service{"by-service", " on {0} {1}"};
inline constexpr Template by_transport{"by-transport", " by {0}"};

// What a promise says; {2} is by_service, by_transport or nothing.
inline constexpr Template promise_reach{"promise-reach", "{0} reaches {1}{2}"};
inline constexpr Template promise_says{"promise-says", "{0}"};
inline constexpr Template promise_never{"promise-never", "{0} never reaches {1}{2}"};

// How promises are kept, by exercise.
inline constexpr Template promise_off{"promise-off", "{0} is off."};
inline constexpr Template promise_nobody_on{"promise-nobody-on", "No machine is on."};
inline constexpr Template promise_unplugged{"promise-unplugged",
                                            "Nobody is plugged into {0}. Not connected: {1}."};
inline constexpr Template promise_all_off{"promise-all-off", "Nobody is on {0}. Off: {1}."};
inline constexpr Template promise_no_card{"promise-no-card", "No machine has a card on {0}. Plug one in."};
inline constexpr Template promise_other_way{
    "promise-other-way", "Nobody on {0} sends to {1} by {0}: their routes lead over other segments."};
inline constexpr Template promise_no_way{"promise-no-way", "Nothing that {0} sends goes that way."};
inline constexpr Template promise_elsewhere{"promise-elsewhere", "It speaks of other exercises."};
inline constexpr Template promise_both{"promise-both", "{0}; {1}"};
inline constexpr Template promise_all_on{"promise-all-on", "everything on"};
inline constexpr Template promise_broken_in{"promise-broken-in", "broken in {0}"};
inline constexpr Template promise_kept_in{"promise-kept-in", "kept in {0}"};
inline constexpr Template promise_not_judged_in{"promise-not-judged-in", "nothing to check in {0}"};
inline constexpr Template promise_broken_everywhere{"promise-broken-everywhere", "broken in every exercise"};
inline constexpr Template promise_kept_everywhere{"promise-kept-everywhere", "kept in every exercise"};
inline constexpr Template promise_judged_nowhere{"promise-judged-nowhere",
                                                 "nothing to check in any exercise"};

} // namespace snug::text
