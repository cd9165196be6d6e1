package coldround.pages;

import coldround.fleet.Kind;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.intake.Column;
import coldround.intake.ColumnType;
import coldround.intake.IntakeTables;
import coldround.pages.VisitSheet.Field;
import coldround.pages.VisitSheet.Graded;
import coldround.pages.VisitSheet.Group;
import coldround.pages.VisitSheet.Line;
import coldround.pages.VisitSheet.Pick;
import coldround.pages.VisitSheet.Ticks;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Lays out the form of a visit: in the order in which a technician walks around the unit. */
public final class VisitSheets {

  private record Stand(String code, String title, List<String> columns) {}

  private static final List<Stand> STANDS =
      List.of(
          new Stand(
              "condenser",
              "At the condenser",
              List.of(
                  "ambient", "head_pressure", "liquid_line", "condenser_fan", "condenser_coil")),
          new Stand(
              "compressor",
              "At the compressor",
              List.of("suction_pressure", "suction_line", "compressor", "contactor", "wiring")),
          new Stand("supply", "Supply", List.of("voltage_l1_l2", "voltage_l2_l3", "voltage_l1_l3")),
          new Stand(
              "box",
              "In the box",
              List.of(
                  "box",
                  "evaporator_in",
                  "evaporator_out",
                  "evaporator_fan",
                  "evaporator_coil",
                  "door",
                  "drain")),
          new Stand(
              "refrigerant", "Refrigerant", List.of("refrigerant_added", "refrigerant_recovered")));

  private static final Map<String, List<String>> PLATE =
      Map.of(
          "head_pressure", List.of("high_cutout"),
          "suction_pressure", List.of("low_cutout"),
          "box", List.of("box_setpoint"),
          "compressor", List.of("compressor_rated"),
          "condenser_fan", List.of("condenser_fan_rated"),
          "evaporator_fan", List.of("evaporator_fan_rated"),
          "voltage_l1_l2", List.of("supply"),
          "voltage_l2_l3", List.of("supply"),
          "voltage_l1_l3", List.of("supply"),
          "refrigerant_added", List.of("charge"));

  private final UnitHistory history;
  private final IntakeTables tables;
  private final MeasureSystem system;
  private final TypedVisit typed;
  private final Told told;

  /**
   * What goes along with what was typed.
   *
   * @param stands the stored visit as its form would show it, where it is not what was seen; null
   *     otherwise
   * @param wrong by field
   * @param says verdicts of a trial
   */
  public record Told(TypedVisit stands, Map<String, String> wrong, List<VerdictView> says) {
    public static final Told NOTHING = new Told(null, Map.of(), List.of());
  }

  private VisitSheets(
      UnitHistory history, IntakeTables tables, MeasureSystem system, TypedVisit typed, Told told) {
    this.history = history;
    this.tables = tables;
    this.system = system;
    this.typed = typed;
    this.told = told;
  }

  /**
   * @param seen tag of the stored visit; empty for a new one
   */
  public static VisitSheet sheet(
      UnitHistory history,
      IntakeTables tables,
      List<Technician> technicians,
      MeasureSystem system,
      LocalDate today,
      String number,
      String seen,
      TypedVisit typed,
      Told told) {
    return new VisitSheets(history, tables, system, typed, told)
        .sheet(technicians, today, number, seen);
  }

  private VisitSheet sheet(
      List<Technician> technicians, LocalDate today, String number, String seen) {
    Unit unit = history.unit();
    Site site = history.site();
    return new VisitSheet(
        unit.id(),
        unit.tag(),
        Words.title(unit.kind()),
        site.name().isEmpty() ? site.code() : site.name(),
        unit.refrigerant(),
        number,
        seen,
        system == MeasureSystem.SI,
        today.toString(),
        new Field("own", typed.text("own"), told.wrong().getOrDefault("own", ""), ""),
        field("date"),
        field("technician"),
        technicians.stream().map(t -> new Pick(t.code(), t.name(), "", false)).toList(),
        graded("purpose", "What for", "purpose", "not said"),
        groups(),
        new FurtherMotors(history, typed, told).rows(),
        ticks("work", "work"),
        ticks("faults", "failure_mode"),
        field("note"),
        List.copyOf(tables.codes().list("not_taken").values()),
        lost(),
        told.wrong().isEmpty()
            ? ""
            : Words.count(told.wrong().size(), "field needs", "fields need"));
  }

  private Field field(String name) {
    return new Field(
        name, typed.text(name), told.wrong().getOrDefault(name, ""), stands(name, stored(name)));
  }

  private String stored(String name) {
    return told.stands() == null ? "" : told.stands().text(name);
  }

  private String stands(String name, String stored) {
    return told.stands() == null || stored.equals(typed.text(name))
        ? ""
        : stored.isEmpty() ? "nothing" : stored;
  }

  private String lost() {
    if (told.stands() == null) {
      return "";
    }
    if (!typed.text("own").isEmpty()) {
      return "This unit has a visit "
          + typed.text("own")
          + " already. Nothing of yours is lost: where the two differ, the field says how that one"
          + " stands. Send again to correct it, or go back and take another number.";
    }
    return "Somebody else has changed this visit since you began. Nothing of yours is lost: where"
        + " the two differ, the field says how the visit stands by now. Send again to put yours"
        + " in its place, or take over what stands.";
  }

  private List<Group> groups() {
    List<Column> columns = tables.columns(Kind.VISITS);
    List<Group> groups = new ArrayList<>();
    List<String> placed = new ArrayList<>();
    for (Stand stand : STANDS) {
      List<Column> its =
          stand.columns().stream()
              .flatMap(name -> tables.columns().find(Kind.VISITS, name).stream())
              .toList();
      its.forEach(column -> placed.add(column.name()));
      groups.add(group(stand.code(), stand.title(), its));
    }
    List<Column> rest = columns.stream().filter(c -> !placed.contains(c.name())).toList();
    groups.add(group("more", "More", rest));
    return groups.stream().filter(g -> !g.lines().isEmpty() || !g.findings().isEmpty()).toList();
  }

  private Group group(String code, String title, List<Column> columns) {
    return new Group(
        code,
        title,
        columns.stream().filter(c -> c.type() == ColumnType.READING).map(this::line).toList(),
        columns.stream().filter(c -> c.type() == ColumnType.GRADE).map(this::finding).toList());
  }

  private Line line(Column column) {
    String name = column.name();
    return new Line(
        name,
        Words.title(name),
        system.measureFor(column.measure()).label(),
        hints(name),
        field(TypedVisit.READ + name),
        field(TypedVisit.WHY + name),
        says(name));
  }

  private List<VerdictView> says(String name) {
    return told.says().stream().filter(verdict -> verdict.speaksOf(name)).toList();
  }

  private List<String> hints(String name) {
    List<String> hints = new ArrayList<>();
    for (String plate : PLATE.getOrDefault(name, List.of())) {
      history
          .unit()
          .plate(plate)
          .ifPresent(q -> hints.add(plateWord(plate) + " " + Figures.quantity(q, system)));
    }
    last(name).ifPresent(hints::add);
    return hints;
  }

  private static String plateWord(String plate) {
    return plate.endsWith("_rated") ? "nameplate" : Words.of(plate);
  }

  private Optional<String> last(String name) {
    return history
        .lastVisit(visit -> visit.value(name).isPresent())
        .map(visit -> last(visit, visit.value(name).orElseThrow()));
  }

  private String last(Visit visit, Quantity value) {
    return "last " + Figures.quantity(value, system) + ", " + Figures.day(visit.date());
  }

  private Graded finding(Column column) {
    return graded(
        TypedVisit.FOUND + column.name(), Words.title(column.name()), column.list(), "not seen");
  }

  private Graded graded(String name, String label, String list, String none) {
    String chosen = typed.text(name);
    List<Pick> picks = new ArrayList<>();
    picks.add(new Pick("", none, "", chosen.isEmpty()));
    tables
        .codes()
        .list(list)
        .forEach(
            (code, meaning) ->
                picks.add(new Pick(code, Words.of(code), meaning, code.equals(chosen))));
    return new Graded(
        name,
        label,
        picks,
        told.wrong().getOrDefault(name, ""),
        stands(name, stored(name)),
        says(name.substring(name.indexOf('.') + 1)));
  }

  private Ticks ticks(String name, String list) {
    Set<String> chosen = Set.copyOf(typed.all(name));
    List<Pick> picks = new ArrayList<>();
    tables
        .codes()
        .list(list)
        .forEach(
            (code, meaning) ->
                picks.add(new Pick(code, Words.title(code), meaning, chosen.contains(code))));
    boolean differs = told.stands() != null && !Set.copyOf(told.stands().all(name)).equals(chosen);
    String stands = differs ? Words.list(told.stands().all(name)) : "";
    return new Ticks(
        name,
        picks,
        told.wrong().getOrDefault(name, ""),
        differs && stands.isEmpty() ? "nothing" : stands);
  }
}
