#pragma once
// The program's own help: what its words mean, its keys, its version.

#include <QDialog>

#include <vector>

class QLineEdit;
class QTabWidget;
class QVBoxLayout;

namespace snug {

class HelpView : public QDialog {
  Q_OBJECT

 public:
  enum class Page : std::uint8_t { words, keys, about };
  // `window` has the actions whose keys are listed.
  explicit HelpView(QWidget& window);
  void open_at(Page page);
  void open_word(std::size_t place); // in text::kHelpWords

 private:
  QWidget* make_words();
  QWidget* make_keys(const QWidget& window);
  QWidget* make_about();
  void find(const QString& typed);

  QTabWidget* pages_;
  QLineEdit* filter_ = nullptr;
  std::vector<QWidget*> words_; // a row each, then the sentence that there is none
};

} // namespace snug
