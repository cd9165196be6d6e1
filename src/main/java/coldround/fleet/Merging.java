package coldround.fleet;

import coldround.quantity.Quantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Lays an entry over what is stored: said wins, silence keeps, erased empties. */
public final class Merging {

  private static final Comparator<Reading> BY_NAME =
      Comparator.comparing(Reading::quantity).thenComparing(Reading::part);

  private Merging() {}

  /**
   * @param stored null for a new one, in all methods
   */
  public static Customer customer(Customer stored, Entry entry) {
    String code = entry.key("customer");
    Customer old = stored != null ? stored : new Customer(code, "", "", "");
    return new Customer(
        code,
        entry.text("name", old.name()),
        entry.text("email", old.email()),
        entry.text("note", old.note()));
  }

  public static Site site(Site stored, Entry entry) {
    Site old = stored != null ? stored : emptySite(entry);
    return new Site(
        old.customer(),
        old.code(),
        entry.text("name", old.name()),
        entry.text("address", old.address()),
        entry.number("latitude", old.latitude()),
        entry.number("longitude", old.longitude()),
        entry.quantity("elevation", old.elevation()),
        entry.zone("time_zone", old.timeZone()),
        entry.text("jurisdiction", old.jurisdiction()),
        entry.text("surroundings", old.surroundings()),
        entry.text("visiting_hours", old.visitingHours()),
        entry.quantity("design_ambient", old.designAmbient()));
  }

  private static Site emptySite(Entry entry) {
    String customer = entry.key("customer");
    String site = entry.key("site");
    return new Site(customer, site, "", "", null, null, null, null, "", "", "", null);
  }

  public static Unit unit(Unit stored, Entry entry) {
    Unit old = stored != null ? stored : emptyUnit(entry);
    return new Unit(
        old.id(),
        old.customer(),
        old.site(),
        entry.key("unit"),
        entry.text("kind", old.kind()),
        entry.text("machine", old.machine()),
        entry.text("maker", old.maker()),
        entry.text("model", old.model()),
        entry.text("serial", old.serial()),
        entry.date("installed", old.installed()),
        entry.text("refrigerant", old.refrigerant()),
        entry.text("condenser_place", old.condenserPlace()),
        entry.date("retired", old.retired()),
        plate(old.plate(), entry));
  }

  private static Unit emptyUnit(Entry entry) {
    String customer = entry.key("customer");
    String site = entry.key("site");
    return new Unit("", customer, site, "", "", "", "", "", "", null, "", "", null, Map.of());
  }

  private static Map<String, Quantity> plate(Map<String, Quantity> stored, Entry entry) {
    Map<String, Quantity> plate = new HashMap<>(stored);
    entry.said().keySet().stream().filter(name -> erased(entry, name)).forEach(plate::remove);
    entry
        .said()
        .forEach(
            (name, value) -> {
              if (value instanceof Quantity quantity) {
                plate.put(name, quantity);
              }
            });
    return plate;
  }

  private static boolean erased(Entry entry, String column) {
    return entry.said().get(column) == Entry.ERASED;
  }

  /** A visit entry of the wide form: columns that hold readings or grades go to their lists. */
  public static Visit visit(Visit stored, Entry entry) {
    Visit old = stored != null ? stored : emptyVisit(entry);
    return new Visit(
        old.number(),
        entry.date("date", old.date()),
        entry.text("technician", old.technician()),
        entry.text("purpose", old.purpose()),
        readings(old.readings(), entry),
        findings(old.findings(), entry),
        entry.codes("work", old.work()),
        entry.codes("faults", old.faults()),
        entry.text("note", old.note()));
  }

  private static Visit emptyVisit(Entry entry) {
    return new Visit(
        entry.key("visit"), null, "", "", List.of(), Map.of(), List.of(), List.of(), "");
  }

  private static List<Reading> readings(List<Reading> stored, Entry entry) {
    Map<List<String>, Reading> readings = new HashMap<>();
    stored.forEach(reading -> readings.put(name(reading), reading));
    entry
        .said()
        .forEach(
            (column, value) -> {
              if (value instanceof Reading reading) {
                readings.merge(name(reading), reading, Merging::reading);
              } else if (value == Entry.ERASED) {
                readings.remove(name(column));
              }
            });
    List<Reading> sorted = new ArrayList<>(readings.values());
    sorted.sort(BY_NAME);
    return sorted;
  }

  /** A value that was confirmed stays so when the same file comes once more. */
  private static Reading reading(Reading stored, Reading said) {
    boolean same = stored.confirmed() && Objects.equals(stored.value(), said.value());
    return same ? stored : said;
  }

  private static List<String> name(Reading reading) {
    return List.of(reading.quantity(), reading.part());
  }

  /** Of a column, or of one part of what it measures: "evaporator_fan", "evaporator_fan fan 2". */
  private static List<String> name(String column) {
    int space = column.indexOf(' ');
    return space < 0
        ? List.of(column, "")
        : List.of(column.substring(0, space), column.substring(space + 1));
  }

  private static Map<String, String> findings(Map<String, String> stored, Entry entry) {
    Map<String, String> findings = new HashMap<>(stored);
    entry
        .said()
        .forEach(
            (column, value) -> {
              if (value instanceof Entry.Grade grade) {
                findings.put(column, grade.grade());
              } else if (value == Entry.ERASED) {
                findings.remove(column);
              }
            });
    return findings;
  }

  public static Fault fault(Fault stored, Entry entry) {
    Fault old = stored != null ? stored : emptyFault(entry);
    return new Fault(
        old.date(),
        old.failureMode(),
        entry.text("cause", old.cause()),
        entry.date("repaired", old.repaired()),
        entry.quantity("downtime", old.downtime()),
        entry.quantity("stock_lost", old.stockLost()),
        entry.text("note", old.note()));
  }

  private static Fault emptyFault(Entry entry) {
    return new Fault(entry.date("date", null), entry.key("failure_mode"), "", null, null, null, "");
  }

  public static Technician technician(Technician stored, Entry entry) {
    String code = entry.key("technician");
    Technician old =
        stored != null ? stored : new Technician(code, "", null, null, "", List.of(), List.of());
    return new Technician(
        code,
        entry.text("name", old.name()),
        entry.number("latitude", old.latitude()),
        entry.number("longitude", old.longitude()),
        entry.text("hours", old.hours()),
        entry.codes("competences", old.competences()),
        entry.days("days_off", old.daysOff()));
  }

  public static TravelTime travelTime(TravelTime stored, Entry entry) {
    String from = entry.key("from");
    String to = entry.key("to");
    TravelTime old = stored != null ? stored : new TravelTime(from, to, 0, null);
    return new TravelTime(
        from, to, minutes(entry, old), entry.quantity("distance", old.distance()));
  }

  private static double minutes(Entry entry, TravelTime old) {
    Double said = entry.number("minutes", old.minutes());
    return said == null ? 0 : said;
  }
}
