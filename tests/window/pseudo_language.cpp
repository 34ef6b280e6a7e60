#include "tests/window/pseudo_language.h"

#include <QHash>

namespace snug::test {

namespace {

QChar accented(QChar c) {
  static const QHash<QChar, QChar> kAccents{{u'a', u'á'}, {u'e', u'ë'}, {u'i', u'î'}, {u'o', u'ö'},
                                            {u'u', u'ü'}, {u'A', u'Å'}, {u'E', u'É'}, {u'I', u'Ï'},
                                            {u'O', u'Ø'}, {u'U', u'Û'}, {u'n', u'ñ'}, {u'c', u'ç'}};
  return kAccents.value(c, c);
}

bool has_letters(const QString& text) {
  return std::any_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
}

} // namespace

QString PseudoLanguage::translate(const char* context, const char* source, const char*, int) const {
  if (!context || !source || qstrcmp(context, "snug") != 0) return {};
  QString text = QString::fromUtf8(source);
  if (!has_letters(text)) return text;
  const auto more = (text.size() * 2 + 4) / 5;
  const bool is_block = text.contains(u'\n');
  for (QChar& c : text) c = accented(c);
  // Words, so that a long text can be broken as any other.
  for (qsizetype i = 0; i < more; ++i) text += i % 6 == 0 && !is_block ? u' ' : u'~';
  return u'[' + text + u']';
}

} // namespace snug::test
