#pragma once
// The language of the screens (DECISIONS 6): a translation by id if there is one, else English; numbers as
// the desktop's locale writes them. Files and the command line never use it.

#include "core/base/tongue.h"

#include <QLocale>
#include <QString>

#include <memory>

class QTranslator;

namespace snug {

// What the screens speak now.
const Tongue& spoken();

// A text of digits and '.' as the desktop's locale writes it: "3,5 GiB".
QString in_locale(QString number);

// From now on `language` is asked for each text: context "snug"; source: the English text; comment: the
// template's id, or "term". Nothing: English. Windows that stand keep their words.
void speak(std::unique_ptr<QTranslator> language);

// Speaks snuglab_<locale>.qm of the first folder that has it, and Qt's own words beside it. False: there is
// none for this locale.
bool speak(const QLocale& locale, const QStringList& folders);
// The folder of the program's own files, then the person's: ~/.local/share/snuglab/translations.
QStringList language_folders();

} // namespace snug
