#include "trial_window.h"

#include "look/quiet_button.h"
#include "settings/settings.h"
#include "shell/start_up.h"
#include "support/trial_language.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QProcess>
#include <QRegularExpression>
#include <QSpinBox>
#include <QStyle>
#include <QStyleOptionComboBox>
#include <QTabBar>
#include <QTableView>
#include <QTextDocument>
#include <QToolBar>
#include <QTranslator>
#include <QXmlStreamReader>
#include <QXmlStreamWriter>

namespace scye::test {
namespace {

void writeFile(const QString& path, const QByteArray& text) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
}

void runTool(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  ASSERT_TRUE(process.waitForFinished(120000)) << program.toStdString();
  ASSERT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
}

// Places, tags and patterns of file names stay.
QString changed(const QString& english, bool few) {
  static const QRegularExpression kept(QStringLiteral(R"(%L?\d+|%n|<[^>]*>|\*\.\w+|&\w+;)"));
  QString out;
  qsizetype from = 0;
  const auto words = [&](qsizetype to) {
    out += QString::fromStdString(trialWords(english.mid(from, to - from).toStdString(), few));
  };
  for (auto at = kept.globalMatch(english); at.hasNext();) {
    const QRegularExpressionMatch match = at.next();
    words(match.capturedStart());
    out += match.captured();
    from = match.capturedEnd();
  }
  words(english.size());
  return out;
}

// The translations written into a file of lupdate's.
QByteArray translated(const QByteArray& ts) {
  QByteArray out;
  QXmlStreamReader in(ts);
  QXmlStreamWriter to(&out);
  QString source;
  bool numerus = false;
  while (!in.atEnd()) {
    in.readNext();
    if (in.isStartElement() && in.name() == QLatin1String("message"))
      numerus = in.attributes().value(QLatin1String("numerus")) == QLatin1String("yes");
    if (in.isStartElement() && in.name() == QLatin1String("translation")) {
      to.writeStartElement(QStringLiteral("translation"));
      if (!numerus) to.writeCharacters(changed(source, false));
      for (int form = 0; numerus && form < 3; ++form)
        to.writeTextElement(QStringLiteral("numerusform"), changed(source, form == 1));
      to.writeEndElement();
      in.skipCurrentElement();
      continue;
    }
    if (in.isStartElement() && in.name() == QLatin1String("source")) {
      source = in.readElementText();
      to.writeTextElement(QStringLiteral("source"), source);
      continue;
    }
    if (!in.isWhitespace()) to.writeCurrentToken(in);
  }
  return out;
}

QString nameOf(const QWidget& w) {
  QString name = QString::fromLatin1(w.metaObject()->className());
  if (!w.objectName().isEmpty()) name += u'#' + w.objectName();
  for (const QWidget* p = w.parentWidget(); p; p = p->parentWidget())
    if (QString::fromLatin1(p->metaObject()->className()).startsWith(QLatin1String("scye::")))
      return QString::fromLatin1(p->metaObject()->className()) + u'/' + name;
  return name;
}

void addModel(const QAbstractItemView& view, const std::function<void(const QVariant&)>& add) {
  const QAbstractItemModel* model = view.model();
  if (!model) return;
  for (int row = 0; row < model->rowCount(); ++row)
    for (int column = 0; column < model->columnCount(); ++column)
      for (const int role : {int(Qt::DisplayRole), int(Qt::ToolTipRole),
                             int(Qt::AccessibleTextRole), int(Qt::AccessibleDescriptionRole)})
        add(model->index(row, column).data(role));
  for (int column = 0; column < model->columnCount(); ++column)
    add(model->headerData(column, Qt::Horizontal));
}

} // namespace

TrialLanguage::TrialLanguage() : before_(qApp->findChildren<QTranslator*>()) {
  writeTranslations();
  const std::string tag = kTrialLanguage;
  QDir(folder_.path()).mkdir(QString::fromStdString(tag));
  writeFile(folder_.filePath(QString::fromStdString(tag + "/all.txt")),
            QByteArray::fromStdString(trialPhraseFile()));
  const QString settings = folder_.filePath(QStringLiteral("settings.json"));
  Settings(settings, builtinPhrases()).setLanguage(QString::fromStdString(tag));
  qputenv("SCYEWRIGHT_LANGUAGES", folder_.path().toLocal8Bit());
  phrases_ = std::make_unique<Phrases>(takeLanguage({settings, {}, {}, {}}));
  EXPECT_EQ(phrases_->language(), tag);
}

TrialLanguage::~TrialLanguage() {
  for (QTranslator* translator : qApp->findChildren<QTranslator*>())
    if (!before_.contains(translator)) delete translator;
  QLocale::setDefault(QLocale::c());
  qunsetenv("SCYEWRIGHT_LANGUAGES");
}

void TrialLanguage::writeTranslations() {
  const QString ts = folder_.filePath(QStringLiteral("sources.ts"));
  runTool(QStringLiteral(SCYE_LUPDATE),
          {QStringLiteral(SCYE_SOURCES "/ui"), QStringLiteral("-silent"),
           QStringLiteral("-source-language"), QStringLiteral("en"),
           QStringLiteral("-target-language"), QStringLiteral("hr"), QStringLiteral("-ts"), ts});
  const QString name =
      folder_.filePath(QStringLiteral("scyewright_") + QString::fromLatin1(kTrialLanguage));
  writeFile(name + QStringLiteral(".ts"), translated(contents(ts)));
  runTool(QStringLiteral(SCYE_LRELEASE), {QStringLiteral("-silent"), name + QStringLiteral(".ts"),
                                          QStringLiteral("-qm"), name + QStringLiteral(".qm")});
}

std::vector<SpokenText> textsOf(QWidget& in) {
  std::vector<SpokenText> out;
  QList<QWidget*> widgets = in.findChildren<QWidget*>();
  widgets.prepend(&in);
  for (const QWidget* w : widgets) {
    const auto add = [&](const QVariant& text) {
      if (text.userType() == QMetaType::QString && !text.toString().isEmpty())
        out.push_back({nameOf(*w), text.toString()});
    };
    for (const QString& text : {w->toolTip(), w->statusTip(), w->whatsThis(), w->accessibleName(),
                                w->accessibleDescription()})
      add(text);
    if (w->isWindow()) add(w->windowTitle());
    if (const auto* label = qobject_cast<const QLabel*>(w)) add(label->text());
    if (const auto* button = qobject_cast<const QAbstractButton*>(w)) add(button->text());
    if (const auto* group = qobject_cast<const QGroupBox*>(w)) add(group->title());
    if (const auto* edit = qobject_cast<const QLineEdit*>(w))
      add(edit->text()), add(edit->placeholderText());
    if (const auto* spin = qobject_cast<const QSpinBox*>(w)) add(spin->text());
    if (const auto* menu = qobject_cast<const QMenu*>(w)) add(menu->title());
    if (const auto* tabs = qobject_cast<const QTabBar*>(w))
      for (int i = 0; i < tabs->count(); ++i)
        add(tabs->tabText(i)), add(tabs->tabToolTip(i));
    if (const auto* box = qobject_cast<const QComboBox*>(w))
      for (int i = 0; i < box->count(); ++i)
        add(box->itemText(i)), add(box->itemData(i, Qt::ToolTipRole));
    if (const auto* view = qobject_cast<const QAbstractItemView*>(w)) addModel(*view, add);
    for (const QAction* action : w->actions())
      add(action->text()), add(action->toolTip()), add(action->iconText());
  }
  return out;
}

std::vector<SpokenText> clippedIn(QWidget& in) {
  std::vector<SpokenText> out;
  for (const QWidget* w : in.findChildren<QWidget*>()) {
    if (!w->isVisible()) continue;
    const auto ask = [&](const QString& text, int wanted, int there, const char* what) {
      if (wanted > there + 1)
        out.push_back({nameOf(*w), QStringLiteral("%1: %2 %3 wanted, %4 there")
                                       .arg(text.left(60), QString::fromLatin1(what))
                                       .arg(wanted)
                                       .arg(there)});
    };
    if (const auto* label = qobject_cast<const QLabel*>(w); label && !label->text().isEmpty()) {
      if (label->wordWrap())
        ask(label->text(), label->heightForWidth(w->width()), w->height(), "high");
      else
        ask(label->text(), label->sizeHint().width(), w->width(), "wide");
    }
    // A quiet button shows its sign, where it has one, as soon as the text has no room.
    if (const auto* button = qobject_cast<const QAbstractButton*>(w);
        button && !button->text().isEmpty())
      ask(button->text(),
          (qobject_cast<const QuietButton*>(w) ? button->minimumSizeHint() : button->sizeHint())
              .width(),
          w->width(), "wide");
    if (const auto* edit = qobject_cast<const QLineEdit*>(w);
        edit && edit->isReadOnly() == false && qobject_cast<QAbstractSpinBox*>(w->parentWidget()))
      ask(edit->text(), edit->fontMetrics().horizontalAdvance(edit->text()), w->width(), "wide");
    if (const auto* box = qobject_cast<const QComboBox*>(w)) {
      QStyleOptionComboBox option;
      option.initFrom(box);
      const QRect field = box->style()->subControlRect(QStyle::CC_ComboBox, &option,
                                                       QStyle::SC_ComboBoxEditField, box);
      ask(box->currentText(), box->fontMetrics().horizontalAdvance(box->currentText()),
          field.width(), "wide");
    }
    if (const auto* tabs = qobject_cast<const QTabBar*>(w))
      for (int i = 0; i < tabs->count(); ++i)
        ask(tabs->tabText(i), tabs->fontMetrics().horizontalAdvance(tabs->tabText(i)),
            tabs->tabRect(i).width(), "wide");
    if (const auto* table = qobject_cast<const QTableView*>(w); table && table->model()) {
      for (int row = 0; row < table->model()->rowCount(); ++row)
        for (int column = 0; column < table->model()->columnCount(); ++column) {
          const QModelIndex at = table->model()->index(row, column);
          ask(at.data().toString(), table->sizeHintForIndex(at).width(), table->columnWidth(column),
              "wide");
        }
    }
    if (const auto* header = qobject_cast<const QHeaderView*>(w);
        header && header->orientation() == Qt::Horizontal && header->model())
      for (int i = 0; i < header->count(); ++i)
        ask(header->model()->headerData(i, Qt::Horizontal).toString(),
            header->fontMetrics().horizontalAdvance(
                header->model()->headerData(i, Qt::Horizontal).toString()),
            header->sectionSize(i), "wide");
  }
  return out;
}

} // namespace scye::test
