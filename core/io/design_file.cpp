#include "io/design_file.h"

#include "io/design_reader.h"
#include "io/json_number.h"
#include "io/work_file.h"
#include "model/plain_text.h"

namespace scye {

std::string designToJson(const Design& design, const Work& work) {
  using Json = nlohmann::ordered_json;
  Json file;
  file["format"] = kDesignFormat;
  file["version"] = kDesignVersion;
  file["title"] = design.title;
  file["wearer"] = design.wearer;
  file["notes"] = design.notes;
  if (!design.ribName.empty()) file["ribName"] = design.ribName;
  if (!design.measuredOn.empty()) file["measuredOn"] = design.measuredOn;
  Json choices = Json::object(), measurements = Json::object(), values = Json::object();
  for (int i = 0; i < kChoiceCount; ++i) {
    const ChoiceInfo& c = info(Choice(i));
    choices[std::string(c.key)] = c.options.begin()[design.option(c.id)];
  }
  for (int i = 0; i < kFieldCount; ++i) {
    const Field field = Field(i);
    const auto value = design.given(field);
    if (!value) continue;
    const std::string key(info(field).key);
    if (isMeasurement(field))
      measurements[key] = {{"value", jsonNumber(*value)},
                           {"source", kSourceKeys[design.source(field)]}};
    else
      values[key] = jsonNumber(*value);
  }
  file["choices"] = std::move(choices);
  file["measurements"] = std::move(measurements);
  file["values"] = std::move(values);
  for (const SwatchReading& swatch : design.swatches) {
    Json entry = {{"label", swatch.label}, {"use", kSwatchUseKeys[swatch.use]}};
    for (const SwatchNumber& number : swatchNumbers())
      entry[std::string(number.key)] = jsonNumber(swatch.*number.value);
    file["swatches"].push_back(std::move(entry));
  }
  if (!work.empty()) file["work"] = workToJson(work);
  return plainJson(file.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

DesignRead designFromJson(std::string_view text, const Phrases& phrases) {
  return DesignReader(text, phrases).read();
}

} // namespace scye
