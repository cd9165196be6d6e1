package coldround.upkeep;

import coldround.fleet.Unit;
import coldround.refrigerant.Refrigerant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** What to beware of at a task: what the task brings with it and what the unit does. */
final class TaskCautions {

  private record Situation(String kind, String refrigerant, String place) {}

  private final UpkeepTables tables;
  // the same few situations come back for every unit of a fleet
  private final Map<Situation, Map<String, List<String>>> known = new ConcurrentHashMap<>();

  TaskCautions(UpkeepTables tables) {
    this.tables = tables;
  }

  /** By task, for tasks on this unit. */
  Map<String, List<String>> of(Unit unit, String refrigerant) {
    Situation situation = new Situation(unit.kind(), refrigerant, unit.condenserPlace());
    return known.computeIfAbsent(situation, this::texts);
  }

  private Map<String, List<String>> texts(Situation situation) {
    Map<String, List<String>> texts = new HashMap<>();
    for (TaskKind task : tables.catalogue().all()) {
      texts.put(task.code(), texts(task, situation));
    }
    return texts;
  }

  private List<String> texts(TaskKind task, Situation key) {
    Set<String> situations = new HashSet<>(task.cautions());
    situations.add(key.place);
    if (!key.kind.startsWith("walk-in")) {
      situations.remove("walk-in");
    }
    tables.refrigerants().find(key.refrigerant).ifPresent(gas -> add(situations, gas));
    return tables.cautions().of(situations);
  }

  private static void add(Set<String> situations, Refrigerant gas) {
    if (gas.flammable() && !gas.toxic()) {
      situations.add(gas.safetyGroup().endsWith("2L") ? "A2L" : "A3");
    }
    if (gas.toxic()) {
      situations.add("toxic");
    }
    if (gas.contains("R-744") && gas.composition().size() == 1) {
      situations.add("CO2");
    }
  }
}
