#include "ui/window/start_page.h"

#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/lab_card.h"
#include "ui/window/own_starts_view.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QShowEvent>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kColumns = 3;

QLabel* heading(const Template& t, const char* tone, QWidget* parent) {
  auto* label = new QLabel(words(t), parent);
  label->setProperty("tone", QLatin1String(tone));
  label->setWordWrap(true);
  return label;
}

} // namespace

StartPage::StartPage(Settings& settings, QWidget* parent) : QWidget(parent), settings_(settings) {
  setObjectName(QStringLiteral("start"));
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  whole->addWidget(scroll);
  auto* inside = new QWidget(scroll);
  scroll->setWidget(inside);
  auto* centred = new QHBoxLayout(inside);
  auto* column = new QVBoxLayout;
  centred->addStretch();
  centred->addLayout(column);
  centred->addStretch();
  column->setSpacing(10);
  column->addSpacing(18);
  column->addWidget(heading(text::start_title, "title", inside));
  auto* row = new QHBoxLayout;
  const auto offer = [&](const char* name, const Template& t, const Template& help, auto act) {
    auto* button = new QPushButton(words(t), inside);
    button->setObjectName(QLatin1String(name));
    button->setToolTip(words(help));
    connect(button, &QPushButton::clicked, this, act);
    row->addWidget(button);
  };
  offer("start_this_pc", text::start_this_pc, text::tip_this_pc, [this] { emit blank_wanted(true); });
  offer("start_blank", text::start_blank, text::tip_blank, [this] { emit blank_wanted(false); });
  offer("start_open", text::start_open, text::tip_open, [this] { emit open_wanted(); });
  row->addStretch();
  column->addLayout(row);
  recent_ = new QVBoxLayout;
  column->addLayout(recent_);
  own_ = new OwnStartsView(inside);
  connect(own_, &OwnStartsView::wanted, this, &StartPage::own_wanted);
  column->addWidget(own_);
  column->addWidget(heading(text::start_samples, "heading", inside));
  samples_ = new QVBoxLayout;
  column->addLayout(samples_);
  column->addStretch();
  refresh();
}

// Their pictures take a while, which a window that opens a lab does not wait for.
void StartPage::showEvent(QShowEvent* event) {
  if (!event->spontaneous()) own_->read();
  if (samples_->count() == 0) {
    samples_->addWidget(samples());
    samples_->itemAt(0)->widget()->show();
  }
  order_tabs();
  QWidget::showEvent(event);
}

// What was made anew would come last.
void StartPage::order_tabs() {
  QWidget* before = findChild<QPushButton*>(QStringLiteral("start_open"));
  const auto then = [&before](QWidget* next) {
    setTabOrder(before, next);
    before = next;
  };
  for (int i = 0; i < recent_->count(); ++i)
    if (auto* link = qobject_cast<QPushButton*>(recent_->itemAt(i)->widget())) then(link);
  for (auto* card : own_->findChildren<LabCard*>()) then(card);
  for (int i = 0; i < samples_->count(); ++i)
    for (auto* card : samples_->itemAt(i)->widget()->findChildren<LabCard*>()) then(card);
}

QWidget* StartPage::samples() {
  auto* box = new QWidget(this);
  auto* grid = new QGridLayout(box);
  grid->setContentsMargins(0, 0, 0, 0);
  int n = 0;
  for (const EmbeddedFile& file : embedded_samples()) {
    const auto lab = read_lab(file.bytes, file.name);
    if (!lab) continue;                  // a test reads them all
    if (lab->machines.empty()) continue; // what the buttons above offer
    auto* card = new LabCard(*lab, as_qt(lab->facts.title.empty() ? file.name : lab->facts.title), box);
    card->setObjectName(QStringLiteral("sample_") + as_qt(file.name));
    connect(card, &QPushButton::clicked, this, [this, name = as_qt(file.name)] { emit sample_wanted(name); });
    grid->addWidget(card, n / kColumns, n % kColumns);
    ++n;
  }
  return box;
}

void StartPage::refresh() {
  while (QLayoutItem* item = recent_->takeAt(0)) {
    if (item->widget()) item->widget()->deleteLater();
    delete item;
  }
  const QStringList& files = settings_.get().recent;
  if (files.isEmpty()) return;
  recent_->addWidget(heading(text::start_recent, "heading", this));
  for (const QString& path : files) {
    const bool there = QFileInfo::exists(path);
    auto* button = new QPushButton(path, this);
    button->setProperty("role", QStringLiteral("link"));
    button->setEnabled(there);
    button->setToolTip(words(there ? text::tip_recent : text::start_gone));
    connect(button, &QPushButton::clicked, this, [this, path] { emit file_wanted(path); });
    recent_->addWidget(button);
  }
  auto* clear = new QPushButton(words(text::start_clear), this);
  clear->setProperty("role", QStringLiteral("link"));
  clear->setToolTip(words(text::tip_forget));
  connect(clear, &QPushButton::clicked, this, &StartPage::forget_wanted);
  recent_->addWidget(clear);
  order_tabs();
}

} // namespace snug
