package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the law does not say about supply, from scoring/supply-credit.csv: how much reclaimed gas
 * and stock add, and the GWP at which an HFC feels the whole cut of a quota.
 */
final class SupplySettings {

  private static final String FILE = "supply-credit.csv";
  private static final String CREDIT = "reclaimed-credit";
  private static final String REFERENCE = "reference-gwp";

  /**
   * @param from first day; the beginning of time where none is given
   */
  record Setting(
      String topic,
      String schedule,
      List<String> families,
      LocalDate from,
      double value,
      Source source) {

    private boolean concerns(Refrigerant gas, List<String> schedules) {
      return families.contains(gas.family())
          && (schedule.equals("*") || schedules.contains(schedule));
    }
  }

  private final List<Setting> credits;
  private final List<Setting> references;

  private SupplySettings(List<Setting> settings) {
    // a row of the schedule itself goes before one for all, then the latest
    Comparator<Setting> own = Comparator.comparing(setting -> setting.schedule.equals("*"));
    List<Setting> sorted =
        settings.stream()
            .sorted(own.thenComparing(Setting::from, Comparator.reverseOrder()))
            .toList();
    this.credits = sorted.stream().filter(setting -> setting.topic.equals(CREDIT)).toList();
    this.references = sorted.stream().filter(setting -> setting.topic.equals(REFERENCE)).toList();
  }

  static SupplySettings load(RuleTables tables) {
    SupplySettings settings =
        new SupplySettings(tables.read(FILE, "setting", SupplySettings::setting));
    for (String family : RefrigerantTable.FAMILIES) {
      if (settings.credits.stream().noneMatch(credit -> always(credit, family))) {
        tables.problem(FILE, 0, "families", "no " + CREDIT + " without a date for " + family);
      }
    }
    return settings;
  }

  private static boolean always(Setting setting, String family) {
    return setting.from.equals(LocalDate.MIN)
        && setting.schedule.equals("*")
        && setting.families.contains(family);
  }

  private static Setting setting(TableRow row) {
    String topic = row.oneOf("topic", Set.of(CREDIT, REFERENCE));
    double value = topic.equals(CREDIT) ? row.number("value", 0, 100) : row.number("value", 1, 1e5);
    return new Setting(
        topic,
        row.required("schedule"),
        PhaseOutTable.families(row),
        row.optionalDate("from").orElse(LocalDate.MIN),
        value,
        row.source());
  }

  /** Share of baseline that reclaimed gas and stock add on that day, in percent. */
  Setting credit(Refrigerant gas, List<String> schedules, LocalDate date) {
    return credits.stream()
        .filter(credit -> credit.concerns(gas, schedules) && !credit.from.isAfter(date))
        .findFirst()
        .orElseThrow();
  }

  /** Days on which a credit changes. */
  List<LocalDate> changes(Refrigerant gas, List<String> schedules) {
    return credits.stream()
        .filter(credit -> credit.concerns(gas, schedules))
        .map(Setting::from)
        .toList();
  }

  /** How much of a quota's cut the gas feels, 0 to 1. */
  double weight(Refrigerant gas, List<String> schedules) {
    return reference(gas, schedules)
        .map(reference -> Math.min(1, gas.gwpAr4() / reference.value()))
        .orElse(1.0);
  }

  /** The GWP from which on a quota's cut counts whole, for families that it counts by GWP. */
  Optional<Setting> reference(Refrigerant gas, List<String> schedules) {
    return references.stream().filter(reference -> reference.concerns(gas, schedules)).findFirst();
  }
}
