#include "ui/window/start_page.h"

#include "core/base/size.h"
#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kHeight = 166, kColumns = 3; // of the small picture

// A sample as a small picture that is drawn from the sample itself, and its title.
class SampleCard : public QPushButton {
 public:
  SampleCard(const EmbeddedFile& file, QWidget* parent) : QPushButton(parent) {
    const auto lab = read_lab(file.bytes, file.name);
    title_ = lab && !lab->facts.title.empty() ? as_qt(lab->facts.title) : as_qt(file.name);
    if (lab) {
      about_ = words(text::start_about, Count{static_cast<std::int64_t>(lab->machines.size())},
                     std::to_string(lab->segments.size()), size_words(lab->pc.installed).toStdString());
      DrawOptions options;
      options.show_ruler = options.show_legend = false;
      drawing_ = draw(analyse(*lab), options);
    }
    setProperty("role", QStringLiteral("sample"));
    setAccessibleName(title_);
    setToolTip(title_);
  }

 protected:
  void paintEvent(QPaintEvent* event) override {
    QPushButton::paintEvent(event);
    QPainter painter(this);
    const Palette& colours = snug::palette(theme_of(palette()));
    const QRectF room(10, 10, width() - 20, kHeight - 10);
    if (drawing_.width > 0) {
      const qreal scale = std::min(room.width() / drawing_.width, room.height() / drawing_.height);
      painter.save();
      painter.translate(room.center() - QPointF(drawing_.width, drawing_.height) * scale / 2);
      painter.scale(scale, scale);
      paint(painter, drawing_, colours);
      painter.restore();
    }
    painter.setFont(diagram_font(13, Weight::semibold));
    painter.setPen(colour(colours, Ink::text));
    QRect used;
    painter.drawText(QRect(12, kHeight + 6, width() - 24, 40), Qt::AlignLeft | Qt::TextWordWrap, title_,
                     &used);
    painter.setFont(diagram_font(12, Weight::regular));
    painter.setPen(colour(colours, Ink::muted));
    painter.drawText(QPointF(12, used.bottom() + 17), about_);
  }

 private:
  QString title_, about_;
  Drawing drawing_;
};

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
  column->addWidget(heading(text::start_samples, "heading", inside));
  samples_ = new QVBoxLayout;
  column->addLayout(samples_);
  column->addStretch();
  refresh();
}

// Their pictures take a while, which a window that opens a lab does not wait for.
void StartPage::showEvent(QShowEvent* event) {
  if (samples_->isEmpty()) samples_->addWidget(samples());
  QWidget::showEvent(event);
}

QWidget* StartPage::samples() {
  auto* box = new QWidget(this);
  auto* grid = new QGridLayout(box);
  grid->setContentsMargins(0, 0, 0, 0);
  int n = 0;
  for (const EmbeddedFile& file : embedded_samples()) {
    auto* card = new SampleCard(file, box);
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
}

} // namespace snug
