#pragma once
// Words of the list in which a person changes the keys of actions.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template act_change_keys{"act-change-keys", "&Change keys…"};
inline constexpr Template keys_title{"keys-title", "Keys of every action"};
inline constexpr Template keys_help{
    "keys-help",
    "Choose a field and press the keys that you want. Backspace leaves the action without keys."};
inline constexpr Template keys_find{"keys-find", "Find an action or its keys"};
inline constexpr Template keys_none_found{"keys-none-found", "No action has such a name or such keys."};
inline constexpr Template keys_no_keys{"keys-no-keys", "no keys"};
inline constexpr Template keys_of{"keys-of", "Keys of {0}"};
inline constexpr Template keys_more_of{"keys-more-of", "Other keys of {0}"};
inline constexpr Template keys_in_menu{"keys-in-menu", "{0} · {1}"};
inline constexpr Template keys_restore{"keys-restore", "As it was"};
inline constexpr Template keys_restore_of{"keys-restore-of", "Gives {0} the keys that it had at first: {1}"};
inline constexpr Template keys_restore_all{"keys-restore-all", "All as it was"};
inline constexpr Template keys_restore_all_help{"keys-restore-all-help",
                                                "Gives every action the keys that it had at first"};
inline constexpr Template keys_taken{"keys-taken", "{0} is the key of “{1}”. Should “{2}” have it?"};
inline constexpr Template keys_take{"keys-take", "Yes, take it"};
inline constexpr Template keys_take_help{"keys-take-help", "“{0}” is left without {1}"};
inline constexpr Template keys_leave{"keys-leave", "No, leave it"};
inline constexpr Template keys_leave_help{"keys-leave-help", "Nothing changes"};
inline constexpr Template keys_bare{
    "keys-bare", "{0} alone is for typing and moving about: hold Ctrl or Alt with it, or use F1 to F12"};
inline constexpr Template keys_round{"keys-round",
                                     "{0} goes from one field or panel to the next: choose other keys"};
inline constexpr Template keys_own_menu{"keys-own-menu",
                                        "{0} opens the menu of what is chosen: choose other keys"};
inline constexpr Template keys_menu{"keys-menu", "{0} opens the menu “{1}”: choose other keys"};
inline constexpr Template keys_unusable{
    "keys-unusable", "The keys that this window remembered for {0} cannot be used: they are as at first"};

} // namespace snug::text
