#include "document/file_writer.h"

namespace scye {

FileWriter::FileWriter(QObject* parent) : QObject(parent) {
  pool_.setMaxThreadCount(1);
}

FileWriter::~FileWriter() {
  wait();
}

void FileWriter::add(std::function<std::optional<QString>()> work) {
  pool_.start([this, work = std::move(work)] {
    if (const auto problem = work())
      QMetaObject::invokeMethod(
          this, [this, reason = *problem] { Q_EMIT failed(reason); }, Qt::QueuedConnection);
  });
}

} // namespace scye
