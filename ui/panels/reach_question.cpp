#include "ui/panels/reach_question.h"

#include "core/reach/explain.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "ui/panels/choice.h"
#include "ui/session/words.h"
#include "ui/window/flow_layout.h"

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStyle>

#include <algorithm>

namespace snug {

namespace {

constexpr int kWidestName = 200, kAddressLetters = 12, kBesideText = 24;

bool same_places(const std::vector<AskablePlace>& a, const std::vector<AskablePlace>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const AskablePlace& x, const AskablePlace& y) {
    return x.id == y.id && x.name == y.name;
  });
}

void set_bad(QComboBox& box, bool bad, const QString& why) {
  box.setProperty("bad", bad);
  box.setToolTip(why);
  box.style()->unpolish(&box);
  box.style()->polish(&box);
}

QLabel* label_for(QWidget& field, const Template& t, QWidget* parent) {
  auto* label = new QLabel(words(t), parent);
  label->setProperty("tone", QStringLiteral("muted"));
  label->setBuddy(&field);
  label->setFixedHeight(field.sizeHint().height());
  return label;
}

} // namespace

ReachQuestionBar::ReachQuestionBar(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("reach_question"));
  auto* row = new FlowLayout(this, 6);
  from_ = make_end(QStringLiteral("ask_from"), text::ask_from_name, &ReachQuestion::from);
  to_ = make_end(QStringLiteral("ask_to"), text::ask_to_name, &ReachQuestion::to);
  make_address();
  make_service();
  full_size_ = new QCheckBox(words(text::ask_full_size), this);
  full_size_->setObjectName(QStringLiteral("ask_full_size"));
  full_size_->setToolTip(words(text::ask_full_size_help));
  full_size_->setFixedHeight(service_->sizeHint().height());
  auto* turn = new QPushButton(words(text::ask_swap), this);
  turn->setObjectName(QStringLiteral("ask_swap"));
  turn->setProperty("role", QStringLiteral("small"));
  turn->setToolTip(words(text::ask_swap_help));
  from_->setToolTip(words(text::tip_ask_from));
  to_->setToolTip(words(text::tip_ask_to));
  row->addWidget(label_for(*from_, text::ask_from, this));
  row->addWidget(from_);
  row->addWidget(label_for(*to_, text::ask_to, this));
  row->addWidget(to_);
  row->addWidget(at_);
  row->addWidget(label_for(*service_, text::ask_by, this));
  row->addWidget(service_);
  row->addWidget(full_size_);
  row->addWidget(turn);
  connect(full_size_, &QCheckBox::toggled, this, [this](bool on) {
    if (!question_ || question_->full_size == on) return;
    question_->full_size = on;
    emit asked();
  });
  connect(turn, &QPushButton::clicked, this, &ReachQuestionBar::swap);
  connect(&session_, &Session::started, this, &ReachQuestionBar::begin_anew);
  connect(&session_, &Session::lab_changed, this, &ReachQuestionBar::follow_lab);
  begin_anew();
}

QComboBox* ReachQuestionBar::make_end(const QString& object, const Template& name,
                                      AnyId ReachQuestion::*end) {
  auto* box = new Choice(this);
  box->setObjectName(object);
  box->setAccessibleName(words(name));
  box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  box->setMaximumWidth(kWidestName);
  box->setMaxVisibleItems(20);
  connect(box, &QComboBox::currentIndexChanged, this, [this, end](int at) {
    if (!question_ || at < 0 || static_cast<std::size_t>(at) >= places_.size()) return;
    const AnyId chosen = places_[static_cast<std::size_t>(at)].id;
    if ((*question_).*end == chosen) return;
    (*question_).*end = chosen;
    question_->target.reset();
    fill_addresses();
    fill_services();
    emit asked();
  });
  return box;
}

// Shown where the other end has several addresses.
void ReachQuestionBar::make_address() {
  at_ = new Choice(this);
  at_->setObjectName(QStringLiteral("ask_at"));
  at_->setAccessibleName(words(text::ask_at_name));
  at_->setToolTip(words(text::ask_at_help));
  at_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  at_->setMinimumContentsLength(kAddressLetters);
  at_->hide();
  connect(at_, &QComboBox::currentIndexChanged, this, [this](int row) {
    if (!question_ || row < 0 || static_cast<std::size_t>(row) > addresses_.size()) return;
    question_->target.reset();
    if (row > 0) question_->target = addresses_[static_cast<std::size_t>(row - 1)].address;
    emit asked();
  });
}

void ReachQuestionBar::forget_stale_address() {
  if (!question_ || !question_->target) return;
  const auto list = askable_addresses(session_.analysis().index(), question_->to);
  const auto is_it = [this](const AskableAddress& a) { return a.address == question_->target; };
  if (!list.empty() && std::none_of(list.begin(), list.end(), is_it)) question_->target.reset();
}

void ReachQuestionBar::fill_addresses() {
  const QSignalBlocker quiet(at_);
  addresses_.clear();
  if (question_) addresses_ = askable_addresses(session_.analysis().index(), question_->to);
  at_->clear();
  at_->addItem(words(text::ask_at_any));
  int chosen = 0;
  for (const AskableAddress& a : addresses_) {
    at_->addItem(as_qt(a.name));
    if (question_->target == a.address) chosen = at_->count() - 1;
  }
  if (chosen == 0 && question_ && question_->target && !addresses_.empty()) { // a given one
    const std::string given = to_text(*question_->target);
    addresses_.push_back({*question_->target, given});
    at_->addItem(as_qt(given));
    chosen = at_->count() - 1;
  }
  at_->setCurrentIndex(chosen);
  at_->view()->setMinimumWidth(at_->view()->sizeHintForColumn(0) + kBesideText); // the list shows all of it
  at_->setVisible(!addresses_.empty());
}

void ReachQuestionBar::make_service() {
  service_ = new Choice(this);
  service_->setObjectName(QStringLiteral("ask_service"));
  service_->setAccessibleName(words(text::ask_service_name));
  service_->setEditable(true);
  service_->setInsertPolicy(QComboBox::NoInsert);
  service_->setCompleter(nullptr);
  service_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  service_->setMinimumContentsLength(10);
  service_->lineEdit()->setAccessibleName(words(text::ask_service_name));
  set_bad(*service_, false, words(text::ask_service_help));
  connect(service_->lineEdit(), &QLineEdit::textEdited, this, &ReachQuestionBar::judge_service);
  connect(service_->lineEdit(), &QLineEdit::editingFinished, this, &ReachQuestionBar::finish_service);
  connect(service_, &QComboBox::activated, this, [this](int at) {
    const auto chosen = parse_service(service_->itemData(at).toString().toStdString());
    if (chosen) set_service(*chosen);
    show_question();
  });
}

void ReachQuestionBar::begin_anew() {
  question_.reset();
  follow_lab();
}

// A question stays as long as its ends are there; a first one is from the first machine to the outside.
void ReachQuestionBar::follow_lab() {
  const Lab& lab = session_.lab();
  if (question_ && !(is_askable(lab, question_->from) && is_askable(lab, question_->to))) question_.reset();
  if (lab.machines.empty()) question_.reset();
  if (!question_ && !lab.machines.empty()) {
    question_.emplace();
    question_->from = lab.machines.front().id;
    question_->to = {Kind::outside, 0};
  }
  if (auto places = askable_places(lab); !same_places(places, places_)) {
    places_ = std::move(places);
    for (QComboBox* box : {from_, to_}) {
      const QSignalBlocker quiet(box);
      box->clear();
      for (const AskablePlace& p : places_) box->addItem(words(node_called(session_.lab(), p.id)));
    }
  }
  setEnabled(question_.has_value());
  forget_stale_address();
  fill_addresses();
  show_question();
  fill_services();
}

void ReachQuestionBar::show_question() {
  const auto row_of = [this](AnyId id) {
    const auto at = std::find_if(places_.begin(), places_.end(), [id](const auto& p) { return p.id == id; });
    return at == places_.end() ? -1 : static_cast<int>(at - places_.begin());
  };
  const QSignalBlocker one(from_), two(to_), three(full_size_);
  from_->setCurrentIndex(question_ ? row_of(question_->from) : -1);
  to_->setCurrentIndex(question_ ? row_of(question_->to) : -1);
  full_size_->setChecked(question_ && question_->full_size);
  QLineEdit& line = *service_->lineEdit();
  if (line.hasFocus() && line.isModified()) return;
  const Service service = question_ ? Service{question_->transport, question_->port} : Service{};
  line.setText(as_qt(service_text(service)));
  set_bad(*service_, false, words(text::ask_service_help));
}

// Ping, what the other end offers, and any packet of TCP or UDP.
void ReachQuestionBar::fill_services() {
  const QString typed = service_->lineEdit()->text();
  const bool modified = service_->lineEdit()->isModified();
  service_->clear();
  const auto put = [this](const Service& s, const QString& text) {
    service_->addItem(text, as_qt(service_text(s)));
  };
  put({}, as_qt(service_text({})));
  if (question_)
    for (const OfferedService& o : offers_of(session_.analysis().index(), question_->to)) {
      const std::string service = service_text(o.service);
      put(o.service, o.name.empty() ? as_qt(service) : words(text::ask_offer, service, o.name));
    }
  for (const Transport t : {Transport::tcp, Transport::udp}) {
    const QString bare = as_qt(service_text({t, 0}));
    if (service_->findData(bare) < 0) put({t, 0}, bare);
  }
  service_->lineEdit()->setText(typed);
  service_->lineEdit()->setModified(modified);
}

void ReachQuestionBar::ask(const ReachQuestion& q) {
  question_ = q;
  service_->lineEdit()->setModified(false);
  setEnabled(true);
  fill_addresses();
  show_question();
  fill_services();
  emit asked();
}

void ReachQuestionBar::swap() {
  if (!question_) return;
  ReachQuestion q = *question_;
  std::swap(q.from, q.to);
  q.target.reset();
  ask(q);
}

void ReachQuestionBar::set_service(const Service& s) {
  service_->lineEdit()->setModified(false);
  if (!question_ || Service{question_->transport, question_->port} == s) return;
  question_->transport = s.transport;
  question_->port = s.port;
  emit asked();
}

// What can be read is asked while it is typed.
void ReachQuestionBar::judge_service(const QString& typed) {
  const auto service = parse_service(typed.toStdString());
  set_bad(*service_, !service, service ? words(text::ask_service_help) : words(service.error().message));
  if (!service || !question_) return;
  set_service(*service);
  service_->lineEdit()->setModified(true);
}

void ReachQuestionBar::finish_service() {
  if (!service_->lineEdit()->isModified()) return;
  const auto service = parse_service(service_->lineEdit()->text().toStdString());
  service_->lineEdit()->setModified(false);
  if (!service) session_.tell(service.error());
  show_question();
}

} // namespace snug
