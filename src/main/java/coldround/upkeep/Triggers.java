package coldround.upkeep;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The events of scoring/task-triggers.csv that ask for a task. */
final class Triggers {

  private static final String FILE = "task-triggers.csv";

  private record Event(Trigger.When when, String what, String grade) {}

  private final Map<Event, List<Trigger>> byEvent = new HashMap<>();

  private Triggers() {}

  static Triggers load(RuleTables tables, TaskCatalogue catalogue) {
    Triggers triggers = new Triggers();
    tables.read(FILE, "trigger", row -> trigger(row, catalogue)).forEach(triggers::add);
    return triggers;
  }

  private static Trigger trigger(TableRow row, TaskCatalogue catalogue) {
    String task = row.required("task");
    if (!catalogue.has(task)) {
      throw new IllegalArgumentException("'" + task + "' is no task of " + TaskCatalogue.FILE);
    }
    String when = row.oneOf("when", Set.of("finding", "fault", "work", "sign"));
    return new Trigger(
        row.required("trigger"),
        Trigger.When.valueOf(when.toUpperCase(Locale.ROOT)),
        row.required("what"),
        row.text("grade"),
        task,
        row.whole("days"),
        row.codes("cleared_by"),
        row.source());
  }

  private void add(Trigger trigger) {
    Event event = new Event(trigger.when(), trigger.what(), trigger.grade());
    byEvent.computeIfAbsent(event, e -> new ArrayList<>()).add(trigger);
  }

  List<Trigger> ofFinding(String part, String grade) {
    return byEvent.getOrDefault(new Event(Trigger.When.FINDING, part, grade), List.of());
  }

  List<Trigger> ofFault(String mode) {
    return byEvent.getOrDefault(new Event(Trigger.When.FAULT, mode, ""), List.of());
  }

  List<Trigger> ofWork(String work) {
    return byEvent.getOrDefault(new Event(Trigger.When.WORK, work, ""), List.of());
  }

  List<Trigger> ofSign(String code) {
    return byEvent.getOrDefault(new Event(Trigger.When.SIGN, code, ""), List.of());
  }
}
