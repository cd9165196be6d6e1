package coldround.pages;

import coldround.field.FieldReading;
import coldround.field.FieldVisit;
import coldround.intake.Column;
import coldround.intake.ColumnType;
import coldround.quantity.MeasureSystem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * What the form of a visit says against what is stored: only what differs is sent, so that nothing
 * is rounded anew by being shown.
 *
 * @param emptied columns whose field was emptied
 * @param wrong by field, what is wrong with the form before anybody else looks at it
 */
public record SentVisit(FieldVisit visit, Set<String> emptied, Map<String, String> wrong) {

  public SentVisit {
    emptied = Set.copyOf(emptied);
    wrong = Map.copyOf(wrong);
  }

  /**
   * @param typed what the form says
   * @param stored what a form of the stored visit would say; empty for a new one
   * @param columns of visits
   * @param language whose decimal sign is meant
   */
  public static SentVisit of(
      TypedVisit typed,
      TypedVisit stored,
      String number,
      List<Column> columns,
      MeasureSystem system,
      Locale language) {
    Comparing comparing = new Comparing(typed, stored, system, language);
    columns.forEach(comparing::column);
    comparing.motors();
    FieldVisit visit =
        new FieldVisit(
            number,
            typed.text("date"),
            comparing.text("technician"),
            comparing.text("purpose"),
            comparing.readings,
            comparing.findings,
            comparing.codes("work"),
            comparing.codes("faults"),
            comparing.text("note"));
    return new SentVisit(visit, comparing.emptied, comparing.wrong);
  }

  /** True when all is stored as it was typed, as after a reply that never arrived. */
  public boolean same(TypedVisit stored) {
    boolean silent = visit.readings().isEmpty() && visit.findings().isEmpty() && wrong.isEmpty();
    boolean noCodes = visit.work().isEmpty() && visit.faults().isEmpty() && emptied.isEmpty();
    String texts = visit.technician() + visit.purpose() + visit.note();
    return silent && noCodes && texts.isEmpty() && visit.date().equals(stored.text("date"));
  }

  /** The field that a refusal is about. */
  public static String field(String path) {
    String name = path.startsWith("/") ? path.substring(1) : path;
    if (name.endsWith("/notTaken")) {
      return name.substring(0, name.lastIndexOf('/')).replace(TypedVisit.READ, TypedVisit.WHY);
    }
    if (name.startsWith("findings/")) {
      return TypedVisit.FOUND + name.substring("findings/".length());
    }
    return name.contains("/") ? name.substring(0, name.indexOf('/')) : name;
  }

  /** Goes through the columns and collects what differs. */
  private static final class Comparing {

    private final TypedVisit typed;
    private final TypedVisit stored;
    private final MeasureSystem system;
    private final Locale language;
    private final List<FieldReading> readings = new ArrayList<>();
    private final Map<String, String> findings = new LinkedHashMap<>();
    private final Set<String> emptied = new LinkedHashSet<>();
    private final Map<String, String> wrong = new LinkedHashMap<>();

    Comparing(TypedVisit typed, TypedVisit stored, MeasureSystem system, Locale language) {
      this.typed = typed;
      this.stored = stored;
      this.system = system;
      this.language = language;
    }

    void column(Column column) {
      if (column.type() == ColumnType.READING) {
        reading(column);
      } else if (column.type() == ColumnType.GRADE) {
        finding(column.name());
      }
    }

    private void reading(Column column) {
      String name = column.name();
      String value = typed.text(TypedVisit.READ + name);
      String why = typed.text(TypedVisit.WHY + name);
      if (same(TypedVisit.READ + name) && same(TypedVisit.WHY + name)) {
        return;
      }
      if (!value.isEmpty() && !why.isEmpty()) {
        wrong.put(
            TypedVisit.READ + name,
            "There is a value and a reason why there is none. Clear one of the two.");
      } else if (value.isEmpty() && why.isEmpty()) {
        emptied.add(name);
      } else {
        String measure = value.isEmpty() ? "" : system.measureFor(column.measure()).code();
        String plain = value.isEmpty() ? "" : TypedNumber.plain(value, language);
        readings.add(new FieldReading("/" + TypedVisit.READ + name, name, "", plain, measure, why));
      }
    }

    private void finding(String part) {
      String grade = typed.text(TypedVisit.FOUND + part);
      if (same(TypedVisit.FOUND + part)) {
        return;
      }
      if (grade.isEmpty()) {
        emptied.add(part);
      } else {
        findings.put(part, grade);
      }
    }

    /** By motor and not by row: rows may be filled in any order. */
    void motors() {
      Map<String, Motor> before = new LinkedHashMap<>();
      stored.motors().forEach(motor -> before.put(motor.key(), motor));
      Set<String> told = new LinkedHashSet<>();
      for (Motor motor : typed.motors()) {
        Motor stands = before.remove(motor.key());
        if (motor.part().isEmpty()) {
          wrong.put(motor.field(), "Say which one it is, such as fan 2.");
        } else if (!told.add(motor.key())) {
          wrong.put(motor.field(), "This motor is told already: leave one of the two out.");
        } else if (!motor.value().isEmpty() && !motor.why().isEmpty()) {
          wrong.put(
              motor.field(),
              "There is a value and a reason why there is none. Clear one of the two.");
        } else if (motor.silent()) {
          before.put(motor.key(), stands);
        } else if (stands == null || !motor.saysAs(stands)) {
          readings.add(reading(motor));
        }
      }
      before.values().removeIf(motor -> motor == null);
      emptied.addAll(before.keySet());
    }

    private FieldReading reading(Motor motor) {
      String plain = motor.value().isEmpty() ? "" : TypedNumber.plain(motor.value(), language);
      String measure = plain.isEmpty() ? "" : "A";
      return new FieldReading(
          "/" + motor.field(), motor.of(), motor.part(), plain, measure, motor.why());
    }

    private boolean same(String name) {
      return typed.text(name).equals(stored.text(name));
    }

    private String text(String name) {
      if (!same(name) && typed.text(name).isEmpty()) {
        emptied.add(name);
      }
      return same(name) ? "" : typed.text(name);
    }

    private List<String> codes(String name) {
      boolean same = Set.copyOf(typed.all(name)).equals(Set.copyOf(stored.all(name)));
      if (!same && typed.all(name).isEmpty()) {
        emptied.add(name);
      }
      return same ? List.of() : typed.all(name);
    }
  }
}
