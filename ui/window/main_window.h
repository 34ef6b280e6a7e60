#pragma once
// The window: one lab, its picture and what is known of it.

#include "core/findings/finding.h"
#include "core/layout/palette.h"
#include "ui/session/session.h"
#include "ui/window/settings.h"

#include <QMainWindow>

#include <functional>
#include <optional>

class QAction;
class QFileSystemWatcher;
class QLabel;
class QPushButton;
class QMenu;
class QMimeData;
class QSplitter;
class QStackedWidget;
class QTabWidget;
class QTimer;

namespace snug {

enum class Duty : std::uint8_t;

class AddressPanel;
class Canvas;
class ExerciseStrip;
class FindBox;
class FindingsPanel;
class HelpView;
class InPlace;
class NoticeBar;
class OutlinePanel;
class PartsPanel;
class PropertyPanel;
class ReachPanel;
class Ruler;
class Shares;
class ShortcutTable;
class ShortcutView;
class Sides;
class StartPage;
struct Added;
struct FindItem;

class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(QWidget* parent = nullptr);
  ~MainWindow() override;

  Session& session() { return session_; }
  Canvas& canvas() { return *canvas_; }
  Ruler& ruler() { return *ruler_; }
  FindingsPanel& findings() { return *findings_; }
  AddressPanel& addresses(); // made when it is first asked for, as the next one
  PropertyPanel& properties() { return *properties_; }
  ReachPanel& reach();
  OutlinePanel& outline() { return *outline_; }
  FindBox& find_box() { return *find_; }
  NoticeBar& notice() { return *notice_; }

  bool open_file(const QString& path);
  void start_sample(std::string_view name); // a copy, untitled
  void start_own(const QString& path);      // a copy of a lab kept for that, untitled
  void start_blank(bool this_pc);           // with the facts of this computer
  // Keeps every step in journals in this folder, and offers what an earlier program left there.
  void keep_in(const QString& folder);
  // Remembers place, sizes and recent files in this file, and takes them up from it.
  void remember_in(const QString& file);
  const Settings& settings() const { return settings_; }
  // The desktop ends the session; true: nothing is lost, the window closes without a question. What is not
  // saved stays in the journal and is offered at the next start. Only where it could not be kept, and
  // `may_ask`, the person is asked.
  bool session_ends(bool may_ask);
  // Of the whole program; light and dark stay as they are whatever the desktop does.
  void choose_colours(Colours colours);
  void set_theme(Theme theme);
  QAction* action(const char* name) const; // by object name; null: none
  void setVisible(bool) override;

 protected:
  void closeEvent(QCloseEvent*) override;
  void dragEnterEvent(QDragEnterEvent*) override;
  void dropEvent(QDropEvent*) override;
  void dragMoveEvent(QDragMoveEvent*) override;
  bool event(QEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  bool eventFilter(QObject*, QEvent*) override;

 private:
  enum Tab { kFindingsTab, kAddressesTab, kReachTab };
  void make_parts();
  void make_shell();
  void keep_select_all_out();
  void connect_panels();
  void connect_session();
  void connect_start_page();
  void mark_findings();
  InPlace& in_place();
  HelpView& help();
  QWidget* make_top();
  QWidget* make_find();
  QWidget* make_middle();
  QWidget* make_footer();
  void make_actions();
  void make_edit_actions(QMenu& change);
  void make_plan_actions(QMenu& plan);
  void make_view_actions(QMenu& view);
  void make_add_actions(QMenu& menu);
  void add_to_plan(const Added& added);
  void show_lab();
  void make_help_actions(QMenu& help);
  void make_own_part_actions(QMenu& menu);
  void connect_own_parts();
  void keep_part_chosen();
  void keep_start(); // asks for the name first
  void ask_start_name(const QString& proposed);
  bool put_start(const QString& name);
  bool write_start(const QString& name, bool replace);
  void make_shortcuts();
  void change_keys();
  void take_keys(); // that the settings remember
  void make_colours_menu(QMenu& view);
  void dress();
  QAction* add(QMenu& menu, const char* name, const Template& words_of, const QKeySequence& keys,
               std::function<void()> act);
  void show_menu(AnyId id, QPoint global);
  void show_page(int page);
  void refresh_title();
  void refresh_actions();
  void refresh_footer();
  void say(const Notice& notice);
  // Runs `then` at once where nothing would be lost, else asks first.
  void unless_unsaved(const std::function<void()>& then);
  bool save();
  bool save_as();
  void ask_open();
  QString usual_folder() const; // empty: none yet
  void finish_typing();         // what stands in a field that is being edited counts
  void offer_recovery();
  void take_place();
  void remember_place();
  void remember_recent(const Result<void>&);
  bool copy_chosen();
  void cut_chosen();
  MachineId paste_into(const std::string& bytes) const;
  void paste_chosen(const std::string& bytes);
  void copy_table();
  QMimeData* picture();
  bool drags_picture(QWidget& button, QEvent& event); // true: the event is done with
  void copy_picture();
  void open_clipboard();
  bool takes(const QMimeData& offered) const;
  void open_dropped(const QList<QUrl>& urls);
  void hand_out();
  void show_start();
  void toggle_socket();
  void own_row();
  void make_duty_actions(QMenu&);
  void refresh_duties();
  void toggle_duty(Duty);
  const Card* card_chosen() const; // alone
  void fill_carry_menu(QMenu&);
  void tidy_up();
  void shift_chosen(bool later);
  void watch_file();
  void file_changed();
  void look_at_file();
  std::vector<MachineId> machines_chosen() const;
  void remove_chosen();
  void duplicate_chosen();
  void power_chosen(bool on);
  void hold_chosen();
  bool are_held() const; // all machines that are chosen
  void fill_move_menu(QMenu& menu);
  void fill_connect_menu(QMenu& menu);
  void fill_compare_menu(QMenu& menu);
  void go_to(const FindItem& item);
  void connect_reach();
  void ask_chosen();
  std::optional<std::pair<AnyId, AnyId>> two_chosen() const; // that can be asked about
  void edit(AnyId id);
  void edit_in_outline(AnyId id);

  Session session_;
  Settings settings_;
  bool ending_ = false; // of the session, until something changes
  bool told_not_kept_ = false;
  Colours colours_ = Colours::desktop;
  Theme theme_ = Theme::light;
  bool dressing_ = false;
  std::optional<Severity> worst_; // of the findings that are shown; a note is none
  Canvas* canvas_ = nullptr;
  Ruler* ruler_ = nullptr;
  InPlace* in_place_ = nullptr; // these three are made when they are first asked for
  ExerciseStrip* exercises_ = nullptr;
  FindingsPanel* findings_ = nullptr;
  AddressPanel* addresses_ = nullptr;
  PropertyPanel* properties_ = nullptr;
  ReachPanel* reach_ = nullptr;
  PartsPanel* parts_ = nullptr;
  OutlinePanel* outline_ = nullptr;
  Sides* sides_ = nullptr;
  QWidget* hand_out_button_ = nullptr;
  QPoint picture_from_; // where that button was pressed
  FindBox* find_ = nullptr;
  NoticeBar* notice_ = nullptr;
  Shares* shares_ = nullptr;
  HelpView* help_ = nullptr; // made when it is first asked for, as the view of keys
  ShortcutTable* shortcuts_ = nullptr;
  ShortcutView* shortcut_view_ = nullptr;
  StartPage* start_ = nullptr;
  QStackedWidget* pages_ = nullptr;
  QString journals_;
  QWidget* top_ = nullptr;
  QWidget* footer_ = nullptr;
  QTabWidget* tabs_ = nullptr;
  QSplitter* down_ = nullptr;
  QPushButton* document_ = nullptr; // its name leads to the lab's title
  QLabel* counts_ = nullptr;
  QLabel* sizes_ = nullptr;
  QFileSystemWatcher* watcher_ = nullptr;
  QTimer* settle_ = nullptr; // runs while the file changes
};

} // namespace snug
