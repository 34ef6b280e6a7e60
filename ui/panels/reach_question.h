#pragma once
// The question about reach as a line of choices: from whom, to whom, by which service, how long the packets
// are.

#include "core/reach/askable.h"
#include "ui/session/session.h"

#include <QWidget>

class QCheckBox;
class QComboBox;

namespace snug {

class ReachQuestionBar : public QWidget {
  Q_OBJECT

 public:
  explicit ReachQuestionBar(Session& session, QWidget* parent = nullptr);
  // Nothing while there is nobody to ask.
  const std::optional<ReachQuestion>& question() const { return question_; }
  void ask(const ReachQuestion&);

 signals:
  void asked();

 private:
  QComboBox* make_end(const QString& object, const Template& name, AnyId ReachQuestion::*end);
  void make_service();
  void make_address();
  void forget_stale_address();
  void fill_addresses();
  void begin_anew();
  void follow_lab();
  void show_question();
  void fill_services();
  void swap();
  void judge_service(const QString& typed);
  void finish_service();
  void set_service(const Service&);

  Session& session_;
  std::vector<AskablePlace> places_;
  std::vector<AskableAddress> addresses_; // of the other end, where there is a choice
  std::optional<ReachQuestion> question_;
  QComboBox *from_, *to_, *at_, *service_;
  QCheckBox* full_size_;
};

} // namespace snug
