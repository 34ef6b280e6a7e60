#include "ui/window/help_view.h"

#include "core/document/read.h"
#include "core/text/help_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QAction>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

namespace snug {

namespace {

QVBoxLayout* column_of(QWidget* page) {
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(12, 10, 12, 10);
  column->setSpacing(10);
  return column;
}

} // namespace

HelpView::HelpView(QWidget& window) : QDialog(&window) {
  setObjectName(QStringLiteral("help"));
  setWindowTitle(words(text::help_title));
  resize(640, 560);
  auto* box = new QVBoxLayout(this);
  pages_ = new QTabWidget(this);
  pages_->setDocumentMode(true);
  pages_->tabBar()->setDrawBase(false);
  pages_->addTab(make_words(), words(text::help_words));
  pages_->addTab(make_keys(window), words(text::help_keys));
  pages_->addTab(make_about(), words(text::help_about));
  pages_->setAccessibleName(words(text::help_title));
  pages_->setTabToolTip(0, words(text::tip_help_words));
  pages_->setTabToolTip(1, words(text::tip_help_keys));
  pages_->setTabToolTip(2, words(text::tip_help_about));
  box->addWidget(pages_, 1);
  auto* buttons = new QDialogButtonBox(this);
  buttons->addButton(words(text::notice_close), QDialogButtonBox::RejectRole)
      ->setToolTip(words(text::tip_close));
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  box->addWidget(buttons);
}

void HelpView::open_at(Page page) {
  pages_->setCurrentIndex(static_cast<int>(page));
  show();
  raise();
  activateWindow();
  if (page != Page::words) return;
  filter_->clear();
  filter_->setFocus();
}

void HelpView::open_word(std::size_t place) {
  open_at(Page::words);
  filter_->setText(words(text::kHelpWords[place].word));
}

QWidget* HelpView::make_words() {
  auto* page = new QWidget(this);
  QVBoxLayout* column = column_of(page);
  filter_ = new QLineEdit(page);
  filter_->setObjectName(QStringLiteral("find_word"));
  filter_->setPlaceholderText(words(text::help_find));
  filter_->setAccessibleName(words(text::help_find));
  filter_->setToolTip(words(text::tip_filter));
  filter_->setClearButtonEnabled(true);
  column->addWidget(filter_);
  auto* inside = new QWidget;
  QVBoxLayout* list = column_of(inside);
  for (const text::HelpWord& w : text::kHelpWords) {
    auto* row = new QWidget(inside);
    row->setObjectName(QStringLiteral("word"));
    auto* lines = new QVBoxLayout(row);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(1);
    lines->addWidget(wrapped_text(words(w.word), "heading", row));
    lines->addWidget(wrapped_text(words(w.means), "", row));
    list->addWidget(row);
    words_.push_back(row);
  }
  words_.push_back(wrapped_text(words(text::help_not_found), "muted", inside));
  words_.back()->hide();
  list->addWidget(words_.back());
  list->addStretch();
  QScrollArea* all = scrolled(inside, page, Qt::StrongFocus);
  all->setAccessibleName(words(text::help_words));
  column->addWidget(all, 1);
  connect(filter_, &QLineEdit::textChanged, this, &HelpView::find);
  return page;
}

void HelpView::find(const QString& typed) {
  bool any = false;
  for (std::size_t i = 0; i < text::kHelpWords.size(); ++i) {
    const text::HelpWord& w = text::kHelpWords[i];
    const bool matches = words(w.word).contains(typed.trimmed(), Qt::CaseInsensitive) ||
                         words(w.means).contains(typed.trimmed(), Qt::CaseInsensitive);
    words_[i]->setVisible(matches);
    any = any || matches;
  }
  words_.back()->setVisible(!any);
}

// Of the hand, then of every action that has keys, as the menus say them.
QWidget* HelpView::make_keys(const QWidget& window) {
  auto* inside = new QWidget;
  auto* grid = new QGridLayout(inside);
  grid->setContentsMargins(12, 10, 12, 10);
  grid->setHorizontalSpacing(18);
  grid->setColumnStretch(1, 1);
  const auto put = [&](const QString& keys, const QString& what) {
    const int row = grid->rowCount();
    grid->addWidget(wrapped_text(keys, "heading", inside), row, 0);
    grid->addWidget(wrapped_text(what, "", inside), row, 1);
  };
  for (const auto& [keys, what] : {std::pair{&text::help_key_tab, &text::help_key_choose},
                                   {&text::help_key_click, &text::help_key_more},
                                   {&text::help_key_enter, &text::help_key_edit},
                                   {&text::help_key_arrows, &text::help_key_place},
                                   {&text::help_key_digits, &text::help_key_count},
                                   {&text::help_key_right, &text::help_key_menu},
                                   {&text::help_key_escape, &text::help_key_leave}})
    put(words(*keys), words(*what));
  for (const QAction* a : window.findChildren<QAction*>()) {
    if (a->menu() || a->objectName().isEmpty()) continue;
    put({}, a->text().remove(QLatin1Char('&')));
    const int row = grid->rowCount() - 1;
    auto* keys = static_cast<QLabel*>(grid->itemAtPosition(row, 0)->widget());
    auto* what = grid->itemAtPosition(row, 1)->widget();
    const auto show_keys = [a, keys, what] { // a person may change them
      QStringList all;
      for (const QKeySequence& k : a->shortcuts())
        if (!k.isEmpty()) all << k.toString(QKeySequence::NativeText);
      keys->setText(all.join(QStringLiteral(", ")));
      for (QWidget* w : {static_cast<QWidget*>(keys), what}) w->setVisible(!all.isEmpty());
    };
    connect(a, &QAction::changed, keys, show_keys);
    show_keys();
  }
  grid->setRowStretch(grid->rowCount(), 1);
  QScrollArea* all = scrolled(inside, this, Qt::StrongFocus);
  all->setAccessibleName(words(text::help_keys));
  return all;
}

QWidget* HelpView::make_about() {
  auto* page = new QWidget(this);
  QVBoxLayout* column = column_of(page);
  const std::string version = QCoreApplication::applicationVersion().toStdString();
  column->addWidget(wrapped_text(words(text::about_name, version).trimmed(), "title", page));
  column->addWidget(wrapped_text(words(text::about_what), "", page));
  column->addWidget(wrapped_text(words(text::about_files, std::to_string(kFormatVersion)), "", page));
  column->addWidget(wrapped_text(words(text::about_caution), "muted", page));
  column->addStretch();
  return page;
}

} // namespace snug
