#include "ui/outline/outline_panel.h"

#include "core/text/outline_text.h"
#include "ui/session/words.h"

#include <QLabel>
#include <QStyle>
#include <QVBoxLayout>

namespace snug {

namespace {
constexpr int kSays = 96;
}

OutlinePanel::OutlinePanel(Session& session, Canvas& canvas, QWidget* parent) : QWidget(parent) {
  auto* box = new QVBoxLayout(this);
  box->setContentsMargins(6, 6, 6, 8);
  view_ = new OutlineView(session, canvas, this);
  box->addWidget(view_, 1);
  says_ = new QLabel(words(text::outline_help), this);
  says_->setWordWrap(true);
  says_->setTextFormat(Qt::PlainText);
  says_->setProperty("tone", QStringLiteral("muted"));
  says_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  says_->setMinimumHeight(kSays); // rows stay where they are while it speaks
  box->addWidget(says_);
  connect(view_, &OutlineView::said, this, [this](const QString& said, bool refused) {
    says_->setText(said.isEmpty() ? words(text::outline_help) : said);
    says_->setProperty("tone", refused          ? QStringLiteral("bad")
                               : said.isEmpty() ? QStringLiteral("muted")
                                                : QStringLiteral("plain"));
    says_->style()->unpolish(says_);
    says_->style()->polish(says_);
  });
}

QString OutlinePanel::said() const { return says_->text(); }

} // namespace snug
