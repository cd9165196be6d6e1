package coldround.pages;

import coldround.fleet.Reading;
import coldround.fleet.UnitHistory;
import coldround.pages.VisitSheet.Field;
import coldround.pages.VisitSheet.Further;
import coldround.pages.VisitSheet.Pick;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lays out the rows for motors where a unit has several of a kind. */
final class FurtherMotors {

  private static final int BLANK_ROWS = 2;

  private final UnitHistory history;
  private final TypedVisit typed;
  private final VisitSheets.Told told;

  FurtherMotors(UnitHistory history, TypedVisit typed, VisitSheets.Told told) {
    this.history = history;
    this.typed = typed;
    this.told = told;
  }

  /** Those that are said, those met at earlier visits, and a few blank ones. */
  List<Further> rows() {
    Map<String, Motor> rows = new LinkedHashMap<>();
    typed.motors().forEach(motor -> rows.put(motor.row() + " " + motor.key(), motor));
    List<String> there = typed.motors().stream().map(Motor::key).toList();
    int row = typed.motors().stream().mapToInt(Motor::row).max().orElse(0);
    for (String key : met()) {
      if (!there.contains(key) && row < Motor.MOST_ROWS) {
        int space = key.indexOf(' ');
        Motor known = new Motor(++row, key.substring(0, space), key.substring(space + 1), "", "");
        rows.put(row + " " + key, known);
      }
    }
    for (int i = 0; i < BLANK_ROWS && row < Motor.MOST_ROWS; i++) {
      rows.put(++row + "", new Motor(row, Motor.KINDS.get(0), "", "", ""));
    }
    return rows.values().stream().map(this::further).toList();
  }

  private List<String> met() {
    List<String> keys = new ArrayList<>();
    history.visits().stream()
        .flatMap(visit -> visit.readings().stream())
        .filter(Motor::is)
        .map(FurtherMotors::key)
        .distinct()
        .sorted()
        .forEach(keys::add);
    return keys;
  }

  private static String key(Reading reading) {
    return reading.quantity() + ' ' + reading.part();
  }

  private Further further(Motor motor) {
    List<Pick> picks = new ArrayList<>();
    for (String kind : Motor.KINDS) {
      picks.add(new Pick(kind, Words.title(kind), "", kind.equals(motor.of())));
    }
    String name = motor.field();
    String wrong = told.wrong().getOrDefault(name, told.wrong().getOrDefault(name + ".value", ""));
    return new Further(
        motor.row(),
        picks,
        new Field(name + ".part", motor.part(), "", ""),
        new Field(name + ".value", motor.value(), wrong, stands(motor)),
        new Field(name + ".why", motor.why(), "", ""));
  }

  private String stands(Motor motor) {
    if (told.stands() == null || motor.part().isEmpty()) {
      return "";
    }
    Motor stored =
        told.stands().motors().stream()
            .filter(other -> other.key().equals(motor.key()))
            .findFirst()
            .orElse(new Motor(0, motor.of(), motor.part(), "", ""));
    if (stored.saysAs(motor)) {
      return "";
    }
    return stored.silent() ? "nothing" : stored.value() + stored.why();
  }
}
