#include "directions/row_table_csv.h"

namespace scye {
namespace {

// Edges are whole or half stitches.
std::string edgeText(double stitches) {
  return numberText(stitches, 1);
}

void add(std::string& csv, PieceId piece, const RowLine& line) {
  const std::string action = actionText(line);
  const bool quoted = action.find(',') != std::string::npos;
  csv.append(pieceKey(piece)).append(",").append(sectionKey(line.section)).append(",");
  csv += std::to_string(line.row.value()) + (line.rightSide() ? ",RS," : ",WS,");
  csv += quoted ? "\"" + action + "\"" : action;
  csv += "," + std::to_string(line.stitches().value()) + "," + edgeText(line.leftEdge) + "," +
         edgeText(line.rightEdge) + "\n";
}

} // namespace

std::string rowTableCsv(const KnitGarment& garment) {
  std::string csv = "piece,section,row,side,action,stitches,left_edge,right_edge\n";
  for (const KnitPiece& piece : garment.pieces)
    for (const RowLine& line : piece.rows)
      add(csv, piece.id, line);
  return csv;
}

} // namespace scye
