package coldround.pages;

import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.quantity.MeasureSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * What is written on a unit and known of its place.
 *
 * @param identity what it is
 * @param settings measured nameplate and settings values
 * @param place where it stands
 */
public record Plate(List<Field> identity, List<Field> settings, List<Field> place) {

  private static final List<String> USUAL =
      List.of(
          "charge",
          "design_split",
          "high_cutout",
          "low_cutout",
          "head_control",
          "compressor_rated",
          "condenser_fan_rated",
          "evaporator_fan_rated",
          "supply",
          "box_setpoint",
          "replacement_cost");

  /**
   * One field of the plate.
   *
   * @param value empty when it was not given
   */
  public record Field(String name, String value) {}

  public Plate {
    identity = List.copyOf(identity);
    settings = List.copyOf(settings);
    place = List.copyOf(place);
  }

  public static Plate of(UnitHistory history, MeasureSystem system) {
    Unit unit = history.unit();
    return new Plate(identity(unit), settings(unit, system), place(history, system));
  }

  private static List<Field> identity(Unit unit) {
    List<Field> fields = new ArrayList<>();
    fields.add(new Field("Kind", Words.title(unit.kind())));
    fields.add(new Field("Maker", unit.maker()));
    fields.add(new Field("Model", unit.model()));
    fields.add(new Field("Serial", unit.serial()));
    fields.add(new Field("Refrigerant", unit.refrigerant()));
    fields.add(
        new Field("Installed", unit.installed() == null ? "" : Figures.day(unit.installed())));
    if (!unit.machine().isEmpty()) {
      fields.add(new Field("Circuit of machine", unit.machine()));
    }
    if (unit.retired() != null) {
      fields.add(new Field("Out of use since", Figures.day(unit.retired())));
    }
    return fields;
  }

  private static List<Field> settings(Unit unit, MeasureSystem system) {
    List<String> columns = new ArrayList<>(USUAL);
    new TreeSet<>(unit.plate().keySet())
        .stream().filter(column -> !USUAL.contains(column)).forEach(columns::add);
    return columns.stream()
        .map(
            column ->
                new Field(
                    Words.title(column),
                    unit.plate(column).map(q -> Figures.quantity(q, system)).orElse("")))
        .toList();
  }

  private static List<Field> place(UnitHistory history, MeasureSystem system) {
    Site site = history.site();
    return List.of(
        new Field("Address", site.address()),
        new Field("Condenser", Words.title(history.unit().condenserPlace())),
        new Field("Surroundings", Words.title(site.surroundings())),
        new Field("Visiting hours", site.visitingHours()),
        new Field(
            "Design ambient",
            site.knownDesignAmbient().map(q -> Figures.quantity(q, system)).orElse("")),
        // heights are read in feet or metres as given; miles would say nothing
        new Field("Elevation", site.elevation() == null ? "" : site.elevation().toString()));
  }
}
