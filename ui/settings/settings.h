// Preferences, typed, in a file of their own. Where the window stood is kept apart
// (AppPaths::windowState): it belongs to a screen, not to a person.
#pragma once

#include "model/phrases.h"
#include "schematic/paper.h"
#include "settings/preference_store.h"

#include <QObject>
#include <QStringList>

namespace scye {

enum class Look { Desktop, Light, Dark };
inline constexpr double kLeastTextSize = 1, kMostTextSize = 2; // of the desktop's letters

class Settings : public QObject {
  Q_OBJECT
public:
  // `phrases`: all words that are not Qt's, in the language that was chosen at the start.
  Settings(const QString& path, const Phrases& phrases, QObject* parent = nullptr);

  [[nodiscard]] const Phrases& phrases() const { return phrases_; }
  // A BCP 47 tag; empty: the desktop's. It holds from the next start.
  [[nodiscard]] QString language() const;
  void setLanguage(const QString& tag);
  [[nodiscard]] static QString languageIn(const QString& path);

  [[nodiscard]] LengthUnit unit() const;
  void setUnit(LengthUnit unit);
  [[nodiscard]] bool restReminder() const; // off at the start
  void setRestReminder(bool on);
  [[nodiscard]] bool gridShown() const;
  void setGridShown(bool shown);
  // The steps of whole stitches and rows over the drafted curves.
  [[nodiscard]] bool stitchesShown() const;
  void setStitchesShown(bool shown);
  [[nodiscard]] Look look() const;
  void setLook(Look look);
  [[nodiscard]] double textSize() const;
  void setTextSize(double factor);
  [[nodiscard]] QString terms() const; // of the directions: "us", "uk"
  void setTerms(const QString& terms);
  [[nodiscard]] ExportOptions exportOptions() const;
  void setExportOptions(const ExportOptions& options); // but for the size of the letters
  void setLargePrint(bool large);                      // of booklets
  [[nodiscard]] QString lastFolder() const;
  void setLastFolder(const QString& folder);

  // Newest first, at most kMostRecent, no file twice.
  [[nodiscard]] QStringList recentFiles() const;
  void addRecentFile(const QString& path);
  void removeRecentFile(const QString& path);

Q_SIGNALS:
  void changed();
  void failed(const QString& reason); // they could not be written

private:
  template <class Value>
  void put(const char* key, const Value& value);
  void takeFormer(const QString& path);

  const Phrases& phrases_;
  PreferenceStore store_;
};

inline constexpr int kMostRecent = 8;

} // namespace scye
