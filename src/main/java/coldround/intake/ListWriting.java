package coldround.intake;

import coldround.fleet.Customer;
import coldround.fleet.Fault;
import coldround.fleet.Reading;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.TravelTime;
import coldround.fleet.Unit;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Rows of the standard form from what is stored: the other way round of an import, so that reading
 * them in again makes the same fleet. A measured value that was given in another unit than the
 * column's says its own, so that nothing is lost by converting.
 */
public final class ListWriting {

  private final List<Column> columns;

  /**
   * @param columns of the kind of list that is written
   */
  public ListWriting(List<Column> columns) {
    this.columns = List.copyOf(columns);
  }

  /** As in the header of the template. */
  public List<String> header() {
    return columns.stream().map(Column::header).toList();
  }

  /** Names without units of measure. */
  public List<String> names() {
    return columns.stream().map(Column::name).toList();
  }

  private List<String> cells(Map<String, Object> said) {
    return columns.stream().map(column -> cell(column, said.get(column.name()))).toList();
  }

  private static String cell(Column column, Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Reading reading) {
      return reading.value() == null ? "n/t: " + reading.notTaken() : cell(column, reading.value());
    }
    if (value instanceof Quantity quantity) {
      String number = number(quantity.value());
      return quantity.measure().equals(column.measure())
          ? number
          : number + " " + quantity.measure().code();
    }
    if (value instanceof Double number) {
      return number(number);
    }
    return value instanceof List<?> codes
        ? String.join(";", codes.stream().map(String::valueOf).toList())
        : value.toString();
  }

  /** Every digit that the value has, without an exponent. */
  private static String number(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  public List<String> row(Customer customer) {
    return cells(
        Map.of(
            "customer", customer.code(),
            "name", customer.name(),
            "email", customer.email(),
            "note", customer.note()));
  }

  public List<String> row(Site site) {
    Map<String, Object> said = new HashMap<>();
    said.put("customer", site.customer());
    said.put("site", site.code());
    said.put("name", site.name());
    said.put("address", site.address());
    said.put("latitude", site.latitude());
    said.put("longitude", site.longitude());
    said.put("elevation", site.elevation());
    said.put("time_zone", site.timeZone());
    said.put("jurisdiction", site.jurisdiction());
    said.put("surroundings", site.surroundings());
    said.put("visiting_hours", site.visitingHours());
    said.put("design_ambient", site.designAmbient());
    return cells(said);
  }

  public List<String> row(Unit unit) {
    Map<String, Object> said = new HashMap<>(unit.plate());
    said.putAll(keys(unit));
    said.put("kind", unit.kind());
    said.put("machine", unit.machine());
    said.put("maker", unit.maker());
    said.put("model", unit.model());
    said.put("serial", unit.serial());
    said.put("installed", unit.installed());
    said.put("refrigerant", unit.refrigerant());
    said.put("condenser_place", unit.condenserPlace());
    said.put("retired", unit.retired());
    return cells(said);
  }

  private static Map<String, Object> keys(Unit unit) {
    return Map.of("customer", unit.customer(), "site", unit.site(), "unit", unit.tag());
  }

  /** Readings of named parts have no column here: {@link #row(Unit, Visit, Reading)} has all. */
  public List<String> row(Unit unit, Visit visit) {
    Map<String, Object> said = new HashMap<>(keys(unit));
    said.put("visit", visit.number());
    said.put("date", visit.date());
    said.put("technician", visit.technician());
    said.put("purpose", visit.purpose());
    said.putAll(visit.findings());
    visit.readings().stream()
        .filter(reading -> reading.part().isEmpty())
        .forEach(reading -> said.put(reading.quantity(), reading));
    said.put("work", visit.work());
    said.put("faults", visit.faults());
    said.put("note", visit.note());
    return cells(said);
  }

  public List<String> row(Unit unit, Visit visit, Reading reading) {
    Map<String, Object> said = new HashMap<>(keys(unit));
    said.put("visit", visit.number());
    said.put("quantity", reading.quantity());
    said.put("part", reading.part());
    if (reading.value() != null) {
      said.put("value", reading.value().value());
      said.put("measure", reading.value().measure().code());
    }
    said.put("not_taken", reading.notTaken());
    return cells(said);
  }

  public List<String> row(Unit unit, Fault fault) {
    Map<String, Object> said = new HashMap<>(keys(unit));
    said.put("date", fault.date());
    said.put("failure_mode", fault.failureMode());
    said.put("cause", fault.cause());
    said.put("repaired", fault.repaired());
    said.put("downtime", fault.downtime());
    said.put("stock_lost", fault.stockLost());
    said.put("note", fault.note());
    return cells(said);
  }

  public List<String> row(Technician technician) {
    Map<String, Object> said = new HashMap<>();
    said.put("technician", technician.code());
    said.put("name", technician.name());
    said.put("latitude", technician.latitude());
    said.put("longitude", technician.longitude());
    said.put("hours", technician.hours());
    said.put("competences", technician.competences());
    said.put("days_off", technician.daysOff());
    return cells(said);
  }

  public List<String> row(TravelTime time) {
    Map<String, Object> said = new HashMap<>();
    said.put("from", time.from());
    said.put("to", time.to());
    said.put("minutes", time.minutes());
    said.put("distance", time.distance());
    return cells(said);
  }
}
