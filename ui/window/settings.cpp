#include "ui/window/settings.h"

#include "core/document/read.h"
#include "core/document/save.h"
#include "core/text/keep_text.h"
#include "ui/session/words.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>

namespace snug {

namespace {

constexpr int kVersion = 1;
constexpr std::size_t kMostOctets = 256 * 1024;
constexpr int kMostNumber = 100'000; // pixels

QJsonArray array(const QList<int>& numbers) {
  QJsonArray out;
  for (const int n : numbers) out.append(n);
  return out;
}

void write(QJsonObject& o, const char* name, Folded folded) {
  if (folded != Folded::by_width)
    o[QLatin1String(name)] = QLatin1String(folded == Folded::open ? "open" : "folded");
}

// Fields of the object; a missing one leaves the default, a wrong one makes the file a damaged one.
class Fields {
 public:
  explicit Fields(const QJsonObject& object) : object_(object) {}
  bool ok() const { return ok_; }

  void read(const char* name, bool& out) {
    const QJsonValue v = object_.value(QLatin1String(name));
    ok_ = ok_ && (v.isUndefined() || v.isBool());
    out = v.toBool();
  }
  void read(const char* name, Colours& out) {
    const QJsonValue v = object_.value(QLatin1String(name));
    const bool light = v == QLatin1String("light"), dark = v == QLatin1String("dark");
    ok_ = ok_ && (v.isUndefined() || light || dark);
    out = dark ? Colours::dark : light ? Colours::light : Colours::desktop;
  }
  void read(const char* name, Folded& out) {
    const QJsonValue v = object_.value(QLatin1String(name));
    const bool open = v == QLatin1String("open"), folded = v == QLatin1String("folded");
    ok_ = ok_ && (v.isUndefined() || open || folded);
    out = open ? Folded::open : folded ? Folded::folded : Folded::by_width;
  }
  void read(const char* name, QList<int>& out) {
    for (const auto& v : list(name)) {
      const int n = v.toInt(kMostNumber + 1);
      ok_ = ok_ && n >= -kMostNumber && n <= kMostNumber;
      out.append(n);
    }
  }
  void read(const char* name, QStringList& out) { texts(object_.value(QLatin1String(name)), out); }
  void read(const char* name, QMap<QString, QStringList>& out) {
    const QJsonValue v = object_.value(QLatin1String(name));
    ok_ = ok_ && (v.isUndefined() || v.isObject());
    const QJsonObject all = v.toObject();
    for (auto k = all.begin(); k != all.end(); ++k) texts(k.value(), out[k.key()]);
  }

 private:
  void texts(const QJsonValue& from, QStringList& out) {
    for (const auto& v : list(from)) {
      ok_ = ok_ && v.isString();
      out.append(v.toString());
    }
  }
  QJsonArray list(const char* name) { return list(object_.value(QLatin1String(name))); }
  QJsonArray list(const QJsonValue& v) {
    ok_ = ok_ && (v.isUndefined() || v.isArray());
    return v.toArray();
  }

  const QJsonObject& object_;
  bool ok_ = true;
};

} // namespace

QByteArray write_settings(const Remembered& r) {
  QJsonObject o;
  o[QLatin1String("version")] = kVersion;
  o[QLatin1String("recent")] = QJsonArray::fromStringList(r.recent);
  if (r.window.isValid())
    o[QLatin1String("window")] = array({r.window.x(), r.window.y(), r.window.width(), r.window.height()});
  o[QLatin1String("maximised")] = r.maximised;
  if (r.colours != Colours::desktop)
    o[QLatin1String("colours")] = QLatin1String(r.colours == Colours::dark ? "dark" : "light");
  write(o, "left", r.left);
  write(o, "right", r.right);
  write(o, "below", r.below);
  o[QLatin1String("across")] = array(r.across);
  o[QLatin1String("down")] = array(r.down);
  QJsonObject keys;
  for (auto k = r.keys.begin(); k != r.keys.end(); ++k) keys[k.key()] = QJsonArray::fromStringList(k.value());
  if (!keys.isEmpty()) o[QLatin1String("keys")] = keys;
  return QJsonDocument(o).toJson();
}

std::optional<Remembered> read_settings(const QByteArray& bytes) {
  const QJsonDocument document = QJsonDocument::fromJson(bytes);
  if (!document.isObject()) return std::nullopt;
  const QJsonObject object = document.object();
  if (object.value(QLatin1String("version")).toInt() != kVersion) return std::nullopt;
  Remembered out;
  QList<int> window;
  Fields fields(object);
  fields.read("recent", out.recent);
  fields.read("window", window);
  fields.read("maximised", out.maximised);
  fields.read("colours", out.colours);
  fields.read("left", out.left);
  fields.read("right", out.right);
  fields.read("below", out.below);
  fields.read("across", out.across);
  fields.read("down", out.down);
  fields.read("keys", out.keys);
  if (!fields.ok() || (!window.isEmpty() && window.size() != 4)) return std::nullopt;
  if (!window.isEmpty()) out.window = {window[0], window[1], window[2], window[3]};
  if (!window.isEmpty() && !out.window.isValid()) return std::nullopt;
  out.recent = out.recent.mid(0, Remembered::kMostRecent);
  return out;
}

QRect on_screens(QRect window, const QList<QRect>& screens) {
  const auto shared = [&window](const QRect& screen) {
    const QRect both = window & screen;
    return both.isEmpty() ? 0 : static_cast<std::int64_t>(both.width()) * both.height();
  };
  const QRect& screen = *std::max_element(
      screens.begin(), screens.end(), [&](const QRect& a, const QRect& b) { return shared(a) < shared(b); });
  window.setSize(window.size().boundedTo(screen.size()));
  window.moveLeft(std::clamp(window.left(), screen.left(), screen.right() - window.width() + 1));
  window.moveTop(std::clamp(window.top(), screen.top(), screen.bottom() - window.height() + 1));
  return window;
}

std::optional<Problem> Settings::keep_in(const QString& file) {
  file_ = file;
  now_ = {};
  return read();
}

std::optional<Problem> Settings::read() {
  if (file_.isEmpty() || !QFileInfo::exists(file_)) return std::nullopt;
  const auto bytes = read_file(file_.toStdString(), kMostOctets);
  if (!bytes) return fail(text::settings_unreadable, bytes.error().message).value();
  auto read = read_settings(QByteArray(bytes->data(), static_cast<qsizetype>(bytes->size())));
  if (!read) return set_aside();
  now_ = std::move(*read);
  return std::nullopt;
}

Problem Settings::set_aside() const {
  const QString aside = file_ + QStringLiteral(".damaged");
  QFile::remove(aside);
  const bool moved = QFile::rename(file_, aside);
  return fail(text::settings_damaged, (moved ? aside : file_).toStdString()).value();
}

Result<void> Settings::change(const std::function<void(Remembered&)>& act) {
  read();
  const Remembered before = now_;
  act(now_);
  if (file_.isEmpty() || now_ == before) return {};
  const QString folder = QFileInfo(file_).absolutePath();
  if (!QDir().mkpath(folder)) return fail(text::settings_folder, folder.toStdString());
  const QByteArray bytes = write_settings(now_);
  const auto saved =
      save_file(file_.toStdString(), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
  if (!saved) return tl::unexpected<Problem>(saved.error());
  return {};
}

Result<void> Settings::add_recent(const QString& path) {
  return change([whole = QFileInfo(path).absoluteFilePath()](Remembered& r) {
    r.recent.removeAll(whole);
    r.recent.prepend(whole);
    r.recent = r.recent.mid(0, Remembered::kMostRecent);
  });
}

Result<void> Settings::forget_recent() {
  return change([](Remembered& r) { r.recent.clear(); });
}

} // namespace snug
