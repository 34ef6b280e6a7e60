#include "ui/window/own_starts_view.h"

#include "core/document/own_starts.h"
#include "core/text/own_starts_text.h"
#include "ui/session/words.h"
#include "ui/window/lab_card.h"

#include <QDir>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QStandardPaths>
#include <QVBoxLayout>

namespace snug {

namespace {
constexpr int kColumns = 3;
}

QString own_starts_folder() {
  const QString templates = QStandardPaths::writableLocation(QStandardPaths::TemplatesLocation);
  return templates.isEmpty() ? QString() : templates + QStringLiteral("/Snuglab");
}

OwnStartsView::OwnStartsView(QWidget* parent) : QWidget(parent), column_(new QVBoxLayout(this)) {
  setObjectName(QStringLiteral("own_starts"));
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(10);
  hide();
}

void OwnStartsView::read() {
  while (QLayoutItem* item = column_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  const OwnStarts all = own_starts(own_starts_folder().toStdString());
  setVisible(!all.starts.empty() || !all.problems.empty());
  if (!isVisibleTo(parentWidget())) return;
  auto* heading = new QLabel(words(text::starts_own), this);
  heading->setProperty("tone", QStringLiteral("heading"));
  column_->addWidget(heading);
  heading->show();
  auto* box = new QWidget(this);
  auto* grid = new QGridLayout(box);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setColumnStretch(kColumns, 1);
  int n = 0;
  for (const OwnStart& start : all.starts) {
    auto* card = new LabCard(start.lab, as_qt(start.name()), box);
    const QString path = as_qt(start.file);
    card->setObjectName(QStringLiteral("own_start_") + QFileInfo(path).completeBaseName());
    card->setToolTip(words(text::own_start_help, start.name(), QDir::toNativeSeparators(path).toStdString()));
    connect(card, &QPushButton::clicked, this, [this, path] { emit wanted(path); });
    grid->addWidget(card, n / kColumns, n % kColumns);
    ++n;
  }
  column_->addWidget(box);
  box->show(); // what comes into a page that is seen would wait for the next event
  for (const Problem& p : all.problems) {
    auto* sentence = new QLabel(words(text::own_start_unreadable, words(p).toStdString()), this);
    sentence->setObjectName(QStringLiteral("own_start_problem"));
    sentence->setTextFormat(Qt::PlainText);
    sentence->setWordWrap(true);
    sentence->setProperty("tone", QStringLiteral("muted"));
    sentence->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column_->addWidget(sentence);
    sentence->show();
  }
}

} // namespace snug
