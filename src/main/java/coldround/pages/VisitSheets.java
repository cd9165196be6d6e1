package coldround.pages;

import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.intake.IntakeTables;
import coldround.pages.VisitSheet.Field;
import coldround.pages.VisitSheet.Pick;
import coldround.quantity.MeasureSystem;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** Lays out the form of a visit: in the order in which a technician walks around the unit. */
public final class VisitSheets {

  private final UnitHistory history;
  private final IntakeTables tables;
  private final MeasureSystem system;
  private final TypedVisit typed;
  private final Told told;
  private final VisitFields fields;

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
    this.fields = new VisitFields(tables.codes(), typed, told);
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
        fields.field("date"),
        fields.field("technician"),
        technicians.stream().map(t -> new Pick(t.code(), t.name(), "", false)).toList(),
        fields.graded("purpose", "What for", "purpose", "not said"),
        new VisitStands(history, tables, system, fields).groups(),
        new FurtherMotors(history, typed, told).rows(),
        fields.ticks("work", "work"),
        fields.ticks("faults", "failure_mode"),
        fields.field("note"),
        List.copyOf(tables.codes().list("not_taken").values()),
        lost(),
        told.wrong().isEmpty()
            ? ""
            : Words.count(told.wrong().size(), "field needs", "fields need"));
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
}
