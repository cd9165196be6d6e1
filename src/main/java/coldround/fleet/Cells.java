package coldround.fleet;

import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is stored as the cells it would stand in, by column of the standard form; columns that say
 * nothing are left out. Two states of one thing are compared by it.
 */
public final class Cells {

  private final Map<String, String> cells = new LinkedHashMap<>();

  private Cells() {}

  public static Map<String, String> of(Customer customer) {
    return new Cells()
        .put("name", customer.name())
        .put("email", customer.email())
        .put("note", customer.note())
        .cells;
  }

  public static Map<String, String> of(Site site) {
    return new Cells()
        .put("name", site.name())
        .put("address", site.address())
        .put("latitude", site.latitude())
        .put("longitude", site.longitude())
        .put("elevation", site.elevation())
        .put("time_zone", site.timeZone())
        .put("jurisdiction", site.jurisdiction())
        .put("surroundings", site.surroundings())
        .put("visiting_hours", site.visitingHours())
        .put("design_ambient", site.designAmbient())
        .cells;
  }

  public static Map<String, String> of(Unit unit) {
    Cells cells =
        new Cells()
            .put("unit", unit.tag())
            .put("kind", unit.kind())
            .put("machine", unit.machine())
            .put("maker", unit.maker())
            .put("model", unit.model())
            .put("serial", unit.serial())
            .put("installed", unit.installed())
            .put("refrigerant", unit.refrigerant())
            .put("condenser_place", unit.condenserPlace())
            .put("retired", unit.retired());
    new TreeMap<>(unit.plate()).forEach(cells::put);
    return cells.cells;
  }

  public static Map<String, String> of(Visit visit) {
    Cells cells =
        new Cells()
            .put("date", visit.date())
            .put("technician", visit.technician())
            .put("purpose", visit.purpose());
    visit.readings().forEach(reading -> cells.put(name(reading), told(reading)));
    new TreeMap<>(visit.findings()).forEach(cells::put);
    return cells
        .put("work", visit.work())
        .put("faults", visit.faults())
        .put("note", visit.note())
        .cells;
  }

  public static Map<String, String> of(Fault fault) {
    return new Cells()
        .put("cause", fault.cause())
        .put("repaired", fault.repaired())
        .put("downtime", fault.downtime())
        .put("stock_lost", fault.stockLost())
        .put("note", fault.note())
        .cells;
  }

  public static Map<String, String> of(Technician technician) {
    return new Cells()
        .put("name", technician.name())
        .put("latitude", technician.latitude())
        .put("longitude", technician.longitude())
        .put("hours", technician.hours())
        .put("competences", technician.competences())
        .put("days_off", technician.daysOff())
        .cells;
  }

  public static Map<String, String> of(TravelTime time) {
    return new Cells().put("minutes", time.minutes()).put("distance", time.distance()).cells;
  }

  private Cells put(String column, Object value) {
    String text = value == null ? "" : told(value);
    if (!text.isEmpty()) {
      cells.put(column, text);
    }
    return this;
  }

  private static String name(Reading reading) {
    return reading.part().isEmpty()
        ? reading.quantity()
        : reading.quantity() + "/" + reading.part();
  }

  /** A value as a cell of the standard form would have it: "148 psig", "n/t: reason", "a;b". */
  public static String told(Object value) {
    if (value instanceof Reading reading) {
      String said = reading.value() == null ? "n/t: " + reading.notTaken() : told(reading.value());
      return reading.confirmed() ? said + "!" : said;
    }
    if (value instanceof Quantity quantity) {
      return number(quantity.value()) + " " + quantity.measure().code();
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Entry.Grade grade) {
      return grade.grade();
    }
    return value instanceof List<?> codes
        ? String.join(";", codes.stream().map(String::valueOf).toList())
        : value.toString();
  }

  private static String number(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }
}
