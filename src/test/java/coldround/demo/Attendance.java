package coldround.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One visit being written down: the cells of its row, and its rows of single readings. */
final class Attendance {

  /** A reading that needs a row of its own because there are several of it. */
  record Single(String quantity, String part, String value, String measure, String notTaken) {}

  final Plant plant;
  final LocalDate day;
  final Map<String, String> cells = new LinkedHashMap<>();
  final List<Single> singles = new ArrayList<>();
  final List<String> work = new ArrayList<>();
  final List<String> faults = new ArrayList<>();
  final List<String> notes = new ArrayList<>();

  Attendance(Plant plant, LocalDate day, String technician, String purpose) {
    this.plant = plant;
    this.day = day;
    cells.put("technician", technician);
    cells.put("purpose", purpose);
  }

  /** The cell of the row, under the header of that column. */
  String cell(String header) {
    String column = header.replaceAll(" \\[.*", "");
    return switch (column) {
      case "work" -> String.join(";", work);
      case "faults" -> String.join(";", faults);
      case "note" -> String.join("; ", notes);
      default -> cells.getOrDefault(column, "");
    };
  }
}
