package coldround.upkeep;

import coldround.fleet.Fault;
import coldround.fleet.Reading;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import coldround.sheet.SheetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The invented contractor of demo-data/, read plainly and without the import. */
final class DemoFleet {

  private static final Path FOLDER = Path.of("demo-data");
  private static final List<String> PARTS =
      List.of("condenser_coil", "evaporator_coil", "contactor", "door", "drain", "wiring");

  private DemoFleet() {}

  static List<UnitHistory> read() {
    Map<String, Site> sites = new HashMap<>();
    rows("sites").forEach(row -> sites.put(row.get("site"), site(row)));
    Map<String, List<Reading>> more = new HashMap<>();
    rows("readings")
        .forEach(
            row ->
                more.computeIfAbsent(key(row) + row.get("visit"), k -> new ArrayList<>())
                    .add(longReading(row)));
    Map<String, List<Visit>> visits = new HashMap<>();
    rows("visits")
        .forEach(
            row ->
                visits
                    .computeIfAbsent(key(row), k -> new ArrayList<>())
                    .add(visit(row, more.getOrDefault(key(row) + row.get("visit"), List.of()))));
    Map<String, List<Fault>> faults = new HashMap<>();
    rows("faults")
        .forEach(row -> faults.computeIfAbsent(key(row), k -> new ArrayList<>()).add(fault(row)));
    return rows("units").stream()
        .map(
            row ->
                new UnitHistory(
                    sites.get(row.get("site")),
                    unit(row),
                    visits.getOrDefault(key(row), List.of()),
                    faults.getOrDefault(key(row), List.of())))
        .toList();
  }

  private static List<Map<String, String>> rows(String list) {
    List<Map<String, String>> rows = new ArrayList<>();
    Path file = FOLDER.resolve(list + ".csv");
    try (SheetReader reader = SheetReader.standard(Files.newBufferedReader(file))) {
      List<String> header = reader.next().cells();
      while (reader.hasNext()) {
        List<String> cells = reader.next().cells();
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.size(); i++) {
          row.put(header.get(i), cells.get(i));
        }
        rows.add(row);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  private static String key(Map<String, String> row) {
    return row.get("customer") + "|" + row.get("site") + "|" + row.get("unit") + "|";
  }

  private static LocalDate date(String cell) {
    return cell == null || cell.isEmpty() ? null : LocalDate.parse(cell);
  }

  private static Double number(String cell) {
    return cell.isEmpty() ? null : Double.valueOf(cell);
  }

  /** The cells of columns that measure, by the name of the column without its unit. */
  private static Map<String, Quantity> measured(Map<String, String> row) {
    Map<String, Quantity> values = new HashMap<>();
    row.forEach(
        (header, cell) -> {
          int bracket = header.indexOf(" [");
          if (bracket > 0 && !cell.isEmpty() && !cell.startsWith("n/t")) {
            String measure = header.substring(bracket + 2, header.length() - 1);
            values.put(
                header.substring(0, bracket), Quantity.of(Double.parseDouble(cell), measure));
          }
        });
    return values;
  }

  private static Site site(Map<String, String> row) {
    Map<String, Quantity> values = measured(row);
    return new Site(
        row.get("customer"),
        row.get("site"),
        row.get("name"),
        row.get("address"),
        number(row.get("latitude")),
        number(row.get("longitude")),
        values.get("elevation"),
        null,
        row.get("jurisdiction"),
        row.get("surroundings"),
        row.get("visiting_hours"),
        values.get("design_ambient"));
  }

  private static Unit unit(Map<String, String> row) {
    return new Unit(
        row.get("site") + "-" + row.get("unit"),
        row.get("customer"),
        row.get("site"),
        row.get("unit"),
        row.get("kind"),
        row.get("machine"),
        row.get("maker"),
        row.get("model"),
        row.get("serial"),
        date(row.get("installed")),
        row.get("refrigerant"),
        row.get("condenser_place"),
        date(row.get("retired")),
        measured(row));
  }

  private static Visit visit(Map<String, String> row, List<Reading> more) {
    List<Reading> readings = new ArrayList<>(more);
    measured(row).forEach((name, value) -> readings.add(Reading.taken(name, value)));
    Map<String, String> findings = new HashMap<>();
    for (String part : PARTS) {
      if (!row.get(part).isEmpty()) {
        findings.put(part, row.get(part));
      }
    }
    return new Visit(
        row.get("visit"),
        date(row.get("date")),
        row.get("technician"),
        row.get("purpose"),
        readings,
        findings,
        codes(row.get("work")),
        codes(row.get("faults")),
        row.get("note"));
  }

  private static List<String> codes(String cell) {
    return Arrays.stream(cell.split(";")).map(String::strip).filter(c -> !c.isEmpty()).toList();
  }

  private static Reading longReading(Map<String, String> row) {
    String notTaken = row.get("not_taken");
    Quantity value =
        notTaken.isEmpty()
            ? Quantity.of(Double.parseDouble(row.get("value")), row.get("measure"))
            : null;
    return new Reading(row.get("quantity"), row.get("part"), value, notTaken, "");
  }

  private static Fault fault(Map<String, String> row) {
    return new Fault(
        date(row.get("date")),
        row.get("failure_mode"),
        row.get("cause"),
        date(row.get("repaired")),
        null,
        null,
        "");
  }
}
