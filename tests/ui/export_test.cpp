// Pictures as files: their sizes measured by programs that have nothing to do with ours (librsvg,
// Qt's reader of SVG, poppler, the bytes of the PNG itself). 100 mm of the drawing are 100.0 mm on
// paper, within 0.1 mm.
#include "canvas/drawing_table.h"
#include "export/export.h"
#include "io/design_file.h"
#include "picture_file.h"
#include "schematic/schematic.h"
#include "window_fixture.h"

#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QImageReader>
#include <QPageSize>
#include <QPrinter>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <QtEndian>

#include <gtest/gtest.h>

namespace scye::test {
namespace {

constexpr double kTolerance = 0.1; // mm in 100 mm

// A bar 100 mm long and 20 mm high, and letters well away from it.
Picture bar() {
  Picture picture;
  picture.title = "Bar & <measure>";
  Group group;
  group.id = "bar";
  group.title = "A bar of \"100 mm\" <exactly>";
  group.strokes.push_back(
      {Path::polyline({{0, 0}, {10, 0}, {10, 2}, {0, 2}, {0, 0}}), Role::Outline, true});
  group.labels.push_back({Vec2(5, 6), "Ärmel & <cap>", Role::Note, 0.5, Anchor::Middle, 0});
  picture.groups.push_back(group);
  return picture;
}

// Length in mm of the bar: the line of the image with the most ink on it and a mm further down,
// which a thin line has not. A dot that is covered in part counts in part, so that the measure is
// finer than a dot.
double barLength(const QImage& image, double dotsPerMm) {
  double full = 255;
  std::vector<double> inks;
  for (int y = 0; y < image.height(); ++y) {
    double ink = 0;
    for (int x = 0; x < image.width(); ++x) {
      ink += 255 - qGray(image.pixel(x, y));
      full = std::min(full, double(qGray(image.pixel(x, y))));
    }
    inks.push_back(ink);
  }
  double most = 0;
  const auto further = std::size_t(dotsPerMm);
  for (std::size_t y = 0; y + further < inks.size(); ++y)
    most = std::max(most, std::min(inks[y], inks[y + further]));
  return most / (255 - full) / dotsPerMm;
}

class Export : public testing::Test {
protected:
  [[nodiscard]] QString file(const char* name) const {
    return folder_.filePath(QString::fromLatin1(name));
  }

  QByteArray run(const char* program, const QStringList& arguments) {
    const QString path = QStandardPaths::findExecutable(QString::fromLatin1(program));
    EXPECT_FALSE(path.isEmpty()) << program << " is needed to measure with";
    QProcess process;
    process.start(path, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program;
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput();
  }
  QImage pdfAt(int dpi, const QString& pdf) {
    run("pdftocairo", {QStringLiteral("-png"), QStringLiteral("-singlefile"), QStringLiteral("-r"),
                       QString::number(dpi), pdf, file("page")});
    return QImage(file("page.png"));
  }

  QTemporaryDir folder_;
};

TEST_F(Export, svgOpensAtTrueSize) {
  ASSERT_FALSE(exportPicture(bar(), file("a.svg")));
  run("rsvg-convert", {QStringLiteral("-d"), QStringLiteral("254"), QStringLiteral("-p"),
                       QStringLiteral("254"), QStringLiteral("-b"), QStringLiteral("white"),
                       QStringLiteral("-o"), file("a.png"), file("a.svg")});
  EXPECT_NEAR(barLength(QImage(file("a.png")), 10), 100, kTolerance);

  // A second reader, Qt's, which takes 90 dots for an inch.
  const QString svg = QString::fromUtf8(contents(file("a.svg")));
  const auto mm = [&](const char* side) {
    const QRegularExpression told(
        QStringLiteral("<svg[^>]* %1=\"([0-9.]+)mm\"").arg(QLatin1String(side)));
    return told.match(svg).captured(1).toDouble();
  };
  QImageReader reader(file("a.svg"));
  EXPECT_NEAR(reader.size().width(), mm("width") * 90 / 25.4, 1);
  EXPECT_NEAR(reader.size().height(), mm("height") * 90 / 25.4, 1);
  reader.setScaledSize({int(std::lround(10 * mm("width"))), int(std::lround(10 * mm("height")))});
  reader.setBackgroundColor(Qt::white);
  EXPECT_NEAR(barLength(reader.read(), 10), 100, kTolerance);
}

TEST_F(Export, svgHasAGroupWithIdAndTitleAPieceAndTextAsText) {
  GarmentDraft draft =
      draftGarment(*designFromJson(contents(demoFile()).toStdString(), builtinPhrases()).design);
  SchematicOptions options;
  ASSERT_FALSE(exportPicture(pieceSchematic(draft, builtinPhrases(), options), file("a.svg")));
  QFile svg(file("a.svg"));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  QXmlStreamReader xml(&svg);
  QStringList ids, titles, texts;
  while (!xml.atEnd()) {
    xml.readNext();
    if (!xml.isStartElement()) continue;
    if (xml.name() == u"svg") {
      EXPECT_TRUE(xml.attributes().value(QLatin1String("width")).endsWith(u"mm"));
    } else if (xml.name() == u"g") {
      ids.append(xml.attributes().value(QLatin1String("id")).toString());
      ASSERT_TRUE(xml.readNextStartElement());
      EXPECT_EQ(xml.name(), u"title");
      titles.append(xml.readElementText());
    } else if (xml.name() == u"text") {
      texts.append(xml.readElementText());
    }
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  for (const Piece& piece : draft.pieces)
    EXPECT_EQ(ids.count(QString::fromUtf8(pieceKey(piece.id).data(),
                                          qsizetype(pieceKey(piece.id).size()))),
              1);
  EXPECT_TRUE(titles.contains(QStringLiteral("Left front")));
  EXPECT_TRUE(texts.contains(QStringLiteral("Sleeve")));
}

TEST_F(Export, wordsWithSignsInThemAreEscaped) {
  ASSERT_FALSE(exportPicture(bar(), file("a.svg")));
  const QByteArray svg = contents(file("a.svg"));
  QXmlStreamReader xml(svg);
  while (!xml.atEnd())
    xml.readNext();
  EXPECT_FALSE(xml.hasError());
  EXPECT_TRUE(svg.contains("Ärmel &amp; &lt;cap&gt;"));
}

TEST_F(Export, pngTellsItsResolutionAndHasTrueSize) {
  for (const double dpi : {100.0, 150.0, 254.0}) {
    ASSERT_FALSE(exportPicture(bar(), file("a.png"), {Paper::TrueSize, dpi}));
    const QByteArray png = contents(file("a.png"));
    const auto at = png.indexOf("pHYs");
    ASSERT_GT(at, 0);
    const auto perMetre = qFromBigEndian<quint32>(png.constData() + at + 4);
    EXPECT_NEAR(perMetre, dpi / 0.0254, 0.5);
    EXPECT_EQ(png[at + 12], 1) << "the unit is the metre";
    const QImage image(file("a.png"));
    EXPECT_NEAR(barLength(image, perMetre / 1000.0), 100, kTolerance) << dpi;
  }
}

TEST_F(Export, pdfHasTrueSize) {
  ASSERT_FALSE(exportPicture(bar(), file("a.pdf")));
  EXPECT_NEAR(barLength(pdfAt(508, file("a.pdf")), 20), 100, kTolerance);
  const QByteArray info = run("pdfinfo", {file("a.pdf")});
  EXPECT_TRUE(info.contains("Bar & <measure>")) << info.toStdString();
  EXPECT_TRUE(run("pdffonts", {file("a.pdf")}).contains("DejaVu")) << "letters are letters";
}

TEST_F(Export, aSheetIsFilledAtAWholeScaleThatIsPrintedOnIt) {
  GarmentDraft draft =
      draftGarment(*designFromJson(contents(demoFile()).toStdString(), builtinPhrases()).design);
  const PictureMaker make = [&](double textHeight) {
    SchematicOptions options;
    options.textHeight = textHeight;
    return pieceSchematic(draft, builtinPhrases(), options);
  };
  const struct {
    Paper paper;
    double width, height;
  } sheets[] = {{Paper::A4, 210, 297}, {Paper::Letter, 215.9, 279.4}};
  for (const auto& sheet : sheets) {
    ASSERT_FALSE(exportPicture(make, file("a.pdf"), {sheet.paper, 100}));
    const QString text = QString::fromUtf8(run("pdftotext", {file("a.pdf"), QStringLiteral("-")}));
    const auto scale = QRegularExpression(QStringLiteral("\\b1 ?: ?(\\d+)")).match(text);
    ASSERT_TRUE(scale.hasMatch()) << text.toStdString();
    const QString info = QString::fromUtf8(run("pdfinfo", {file("a.pdf")}));
    const auto size =
        QRegularExpression(QStringLiteral("Page size:\\s+([\\d.]+) x ([\\d.]+)")).match(info);
    ASSERT_TRUE(size.hasMatch());
    const double mm = 25.4 / 72;
    const double a = size.captured(1).toDouble() * mm, b = size.captured(2).toDouble() * mm;
    EXPECT_NEAR(std::min(a, b), sheet.width, 0.4); // the page box is whole points
    EXPECT_NEAR(std::max(a, b), sheet.height, 0.4);
    EXPECT_EQ(run("pdfinfo", {file("a.pdf")}).count("Pages:"), 1);
  }
}

TEST_F(Export, theScaleOfASheetIsExact) {
  // 60 cm: too long for the sheet at 1 : 2, whatever way it is turned.
  Picture wide = bar();
  wide.groups[0].strokes[0].path = Path::polyline({{0, 0}, {60, 0}, {60, 2}, {0, 2}, {0, 0}});
  ASSERT_FALSE(exportPicture(wide, file("a.pdf"), {Paper::A4, 100}));
  const QString text = QString::fromUtf8(run("pdftotext", {file("a.pdf"), QStringLiteral("-")}));
  const int n =
      QRegularExpression(QStringLiteral("\\b1 ?: ?(\\d+)")).match(text).captured(1).toInt();
  ASSERT_GT(n, 1);
  EXPECT_NEAR(barLength(pdfAt(508, file("a.pdf")), 20), 600.0 / n, kTolerance * 600.0 / n / 100);
}

TEST_F(Export, whatIsPrintedHasTheScaleThatStandsBelowIt) {
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(file("printed.pdf"));
  printer.setPageSize(QPageSize(QPageSize::A4));
  const Picture picture = bar();
  const SheetsMaker onPaper = [&](const Vec2& size) {
    return std::vector{
        fittedSheet([&](double) { return picture; }, size, false, {}, builtinPhrases())};
  };
  ASSERT_FALSE(printSheets(onPaper, printer));
  const QString text =
      QString::fromUtf8(run("pdftotext", {file("printed.pdf"), QStringLiteral("-")}));
  EXPECT_TRUE(text.contains(QRegularExpression(QStringLiteral("\\b1 ?: ?1\\b"))))
      << text.toStdString();
  EXPECT_NEAR(barLength(pdfAt(508, file("printed.pdf")), 20), 100, kTolerance);
}

TEST_F(Export, whatCannotBeWrittenIsSaid) {
  EXPECT_TRUE(exportPicture(bar(), file("no/such/folder.svg")));
  EXPECT_TRUE(exportPicture(bar(), file("a.gif")));
  EXPECT_TRUE(exportPicture(bar(), file("a.png"), {Paper::TrueSize, 1e6}));
  EXPECT_FALSE(QFile::exists(file("a.gif")));
  EXPECT_FALSE(QFile::exists(file("a.png")));
}

} // namespace
} // namespace scye::test
