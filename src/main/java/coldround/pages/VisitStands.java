package coldround.pages;

import coldround.fleet.Kind;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.intake.Column;
import coldround.intake.ColumnType;
import coldround.intake.IntakeTables;
import coldround.pages.VisitSheet.Graded;
import coldround.pages.VisitSheet.Group;
import coldround.pages.VisitSheet.Line;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is read and looked at, by where a technician stands on the way around the unit. */
final class VisitStands {

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
  private final VisitFields fields;

  VisitStands(UnitHistory history, IntakeTables tables, MeasureSystem system, VisitFields fields) {
    this.history = history;
    this.tables = tables;
    this.system = system;
    this.fields = fields;
  }

  List<Group> groups() {
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
        fields.field(TypedVisit.READ + name),
        fields.field(TypedVisit.WHY + name),
        fields.says(name));
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
    return fields.graded(
        TypedVisit.FOUND + column.name(), Words.title(column.name()), column.list(), "not seen");
  }
}
