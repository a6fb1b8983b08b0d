// What the swatches say together: the gauge in use and how sure it is, what washing did, the gauge
// of another stitch pattern, the fabric's weight; and what the uncertainty does to the garment.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace scye {

class SwatchBand;

class SwatchReport : public QWidget {
  Q_OBJECT
public:
  explicit SwatchReport(const PanelContext& context, QWidget* parent = nullptr);

private:
  struct Effect {
    QLabel* name;
    QLabel* figure;
    SwatchBand* band;
  };
  void addEffect(const QString& name, QGridLayout* grid);
  void refresh();
  void showEffects();
  [[nodiscard]] QString gaugeText(const std::optional<SwatchGauge>& across,
                                  const std::optional<SwatchGauge>& along) const;
  [[nodiscard]] QStringList sentences() const;

  PanelContext context_;
  QLabel* gauge_;
  QLabel* more_;
  QWidget* effects_;
  QLabel* wider_;
  std::vector<Effect> rows_;
};

} // namespace scye
