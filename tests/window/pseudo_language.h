#pragma once
// A language for tests: each text gets accents and two fifths more of length between brackets, so that what
// is not translated and what has too little room can be seen.

#include <QTranslator>

namespace snug::test {

class PseudoLanguage : public QTranslator {
 public:
  bool isEmpty() const override { return false; }
  QString translate(const char* context, const char* source, const char* comment, int n) const override;
};

} // namespace snug::test
