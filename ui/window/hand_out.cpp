#include "ui/window/hand_out.h"

#include "core/document/save.h"
#include "core/edit/build.h"
#include "core/report/escape.h"
#include "core/report/findings_report.h"
#include "core/report/svg.h"
#include "core/report/tables.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/diagram/export.h"
#include "ui/session/words.h"
#include "ui/window/file_choice.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFontDatabase>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPixmap>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr std::array<PaperInfo, 7> kPapers{
    {{Paper::svg, text::paper_svg, ".svg"},
     {Paper::png, text::paper_png, ".png"},
     {Paper::pdf, text::paper_pdf, ".pdf"},
     {Paper::table_csv, text::paper_csv, "-addresses.csv"},
     {Paper::table_markdown, text::paper_markdown, "-addresses.md"},
     {Paper::table_html, text::paper_html, "-addresses.html"},
     {Paper::findings_markdown, text::paper_findings, "-findings.md"}}};

QByteArray octets(const std::string& s) { return QByteArray(s.data(), static_cast<qsizetype>(s.size())); }

constexpr const char* kLastFolder = "hand_out_folder"; // of the session: where the last one went

// Its name above it.
QLabel* add_field(QGridLayout& row, const Template& name, QWidget& field, int stretch) {
  auto* label = new QLabel(words(name), field.parentWidget());
  label->setProperty("tone", QStringLiteral("muted"));
  label->setBuddy(&field);
  const int column = row.columnCount();
  row.addWidget(label, 0, column);
  row.addWidget(&field, 1, column);
  row.setColumnStretch(column, stretch);
  return label;
}

bool is_picture(Paper p) { return p == Paper::svg || p == Paper::png || p == Paper::pdf; }

} // namespace

std::span<const PaperInfo> papers() { return kPapers; }

Result<QByteArray> make_paper(const Analysis& a, ExerciseId exercise, Paper paper, Theme theme) {
  DrawOptions options;
  options.exercise = exercise;
  switch (paper) {
  case Paper::svg:
    return octets(svg(draw(a, options), {theme}));
  case Paper::png:
    return png(draw(a, options), snug::palette(theme));
  case Paper::pdf:
    return pdf(draw(a, options), snug::palette(theme));
  case Paper::table_csv:
    return octets(csv(address_table(a)));
  case Paper::table_markdown:
    return octets(markdown(address_table(a)));
  case Paper::table_html:
    return octets(html(address_table(a), a.lab().facts.language));
  case Paper::findings_markdown:
    return octets(findings_markdown(a));
  }
  return QByteArray();
}

HandOut::HandOut(Session& session, QWidget* parent) : QDialog(parent), session_(session) {
  setObjectName(QStringLiteral("hand_out"));
  setWindowTitle(words(text::hand_out_title));
  resize(900, 640);
  auto* box = new QVBoxLayout(this);
  auto* top = new QGridLayout;
  top->setVerticalSpacing(2);
  what_ = new QComboBox(this);
  what_->setObjectName(QStringLiteral("paper"));
  what_->setToolTip(words(text::tip_paper));
  for (const PaperInfo& p : kPapers) what_->addItem(words(p.title));
  theme_ = new QComboBox(this);
  theme_->setObjectName(QStringLiteral("colours"));
  theme_->setToolTip(words(text::tip_paper_colours));
  for (const Template* t : {&text::theme_light, &text::theme_dark, &text::theme_print})
    theme_->addItem(words(*t));
  exercise_ = new QComboBox(this);
  exercise_->setObjectName(QStringLiteral("paper_exercise"));
  exercise_->setToolTip(words(text::tip_paper_exercise));
  exercise_->setAccessibleName(words(text::tip_paper_exercise));
  exercise_->addItem(words(text::exercise_all_on));
  for (const Exercise& e : session_.lab().exercises) {
    exercise_->addItem(as_qt(name_of(session_.lab(), e.id)));
    if (e.id == session_.exercise()) exercise_->setCurrentIndex(exercise_->count() - 1);
  }
  title_ = new QLineEdit(as_qt(session_.lab().facts.title), this);
  title_->setObjectName(QStringLiteral("lab_title"));
  title_->setPlaceholderText(words(text::hand_out_no_title));
  title_->setAccessibleName(words(text::hand_out_lab_title));
  title_->setToolTip(words(text::hand_out_lab_title));
  title_->setMaxLength(200);
  add_field(*top, text::hand_out_no_title, *title_, 1);
  add_field(*top, text::hand_out_what, *what_, 1);
  exercise_label_ = add_field(*top, text::hand_out_exercise, *exercise_, 0);
  theme_label_ = add_field(*top, text::hand_out_colours, *theme_, 0);
  box->addLayout(top);
  preview_ = new QStackedWidget(this);
  picture_ = new QLabel(preview_);
  picture_->setAlignment(Qt::AlignCenter);
  picture_->setMinimumSize(320, 240);
  text_ = new QPlainTextEdit(preview_);
  text_->setReadOnly(true);
  text_->setAccessibleName(words(text::tip_preview));
  text_->setToolTip(words(text::tip_preview));
  text_->setLineWrapMode(QPlainTextEdit::NoWrap);
  text_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  preview_->addWidget(picture_);
  preview_->addWidget(text_);
  box->addWidget(preview_, 1);
  said_ = new QLabel(this);
  said_->setWordWrap(true);
  said_->setTextFormat(Qt::PlainText);
  box->addWidget(said_);
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* save = buttons->addButton(words(text::hand_out_save), QDialogButtonBox::ActionRole);
  save->setDefault(true);
  save->setToolTip(words(text::tip_save_paper));
  buttons->addButton(words(text::notice_close), QDialogButtonBox::RejectRole)
      ->setToolTip(words(text::tip_close));
  box->addWidget(buttons);
  connect(save, &QPushButton::clicked, this, &HandOut::ask);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(title_, &QLineEdit::editingFinished, this, &HandOut::take_title);
  connect(what_, &QComboBox::currentIndexChanged, this, &HandOut::refresh);
  connect(theme_, &QComboBox::currentIndexChanged, this, &HandOut::refresh);
  connect(exercise_, &QComboBox::currentIndexChanged, this, &HandOut::refresh);
  refresh();
}

Paper HandOut::paper() const {
  return kPapers[static_cast<std::size_t>(std::max(0, what_->currentIndex()))].paper;
}

void HandOut::choose(Paper paper) {
  for (std::size_t i = 0; i < kPapers.size(); ++i)
    if (kPapers[i].paper == paper) what_->setCurrentIndex(static_cast<int>(i));
}

ExerciseId HandOut::exercise() const {
  const int at = exercise_->currentIndex();
  return at > 0 ? session_.lab().exercises[static_cast<std::size_t>(at) - 1].id : ExerciseId{};
}

Theme HandOut::theme() const { return static_cast<Theme>(std::max(0, theme_->currentIndex())); }

void HandOut::take_title() {
  const std::string typed = title_->text().trimmed().toStdString();
  if (typed == session_.lab().facts.title) return;
  session_.seal();
  if (!session_.perform(set_field(session_.lab(), {Kind::lab, 0}, "title", Value(typed))))
    title_->setText(as_qt(session_.lab().facts.title));
  refresh();
}

void HandOut::refresh() {
  said_->clear();
  for (QWidget* w : {static_cast<QWidget*>(theme_), static_cast<QWidget*>(theme_label_)})
    w->setVisible(is_picture(paper()));
  for (QWidget* w : {static_cast<QWidget*>(exercise_), static_cast<QWidget*>(exercise_label_)})
    w->setVisible(is_picture(paper()) && exercise_->count() > 1);
  const Paper shown = is_picture(paper()) ? Paper::png : paper();
  const auto bytes = make_paper(session_.analysis(), exercise(), shown, theme());
  preview_->setCurrentWidget(is_picture(paper()) ? static_cast<QWidget*>(picture_) : text_);
  if (!bytes) return said_->setText(words(bytes.error().message));
  if (!is_picture(paper())) return text_->setPlainText(QString::fromUtf8(*bytes));
  QPixmap whole;
  whole.loadFromData(*bytes);
  picture_->setPixmap(whole.scaled(860, 500, Qt::KeepAspectRatio, Qt::SmoothTransformation));
}

bool HandOut::write_to(const QString& path) {
  const auto bytes = make_paper(session_.analysis(), exercise(), paper(), theme());
  if (!bytes) return said_->setText(words(bytes.error().message)), false;
  const auto saved =
      save_file(path.toStdString(), {bytes->constData(), static_cast<std::size_t>(bytes->size())});
  if (!saved) return said_->setText(words(saved.error())), false;
  said_->setText(words(text::hand_out_saved, path.toStdString()));
  return true;
}

void HandOut::ask() {
  const std::size_t at = static_cast<std::size_t>(std::max(0, what_->currentIndex()));
  const QFileInfo document(session_.path());
  QString folder = session_.path().isEmpty() ? QString() : document.path() + QLatin1Char('/');
  if (const QString last = session_.property(kLastFolder).toString(); !last.isEmpty()) folder = last;
  QString name = session_.path().isEmpty() ? session_.shown_name() : document.completeBaseName();
  if (is_picture(paper()) && exercise()) name += QLatin1Char(' ') + exercise_->currentText();
  const std::string proposed = FileNames().next(name.toStdString(), kPapers[at].ending);
  const QString path = choose_file(this, {words(text::hand_out_title), folder + as_qt(proposed), {}, true});
  if (path.isEmpty() || !write_to(path)) return;
  session_.setProperty(kLastFolder, QFileInfo(path).path() + QLatin1Char('/'));
}

} // namespace snug
