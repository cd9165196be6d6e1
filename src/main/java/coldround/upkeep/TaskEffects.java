package coldround.upkeep;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Which faults a task prevents, and how many of them: scoring/task-effects.csv. */
final class TaskEffects {

  private static final String FILE = "task-effects.csv";

  /**
   * @param mode failure mode; * for all faults of the unit together; dirt, energy or refrigerant
   *     for what is lost without a fault
   * @param when code of a reason that the task must have; empty for always
   * @param share of such faults or losses that doing the task on time prevents, 0 to 1
   */
  record Effect(String task, String mode, String when, double share, Source source) {}

  /** What is lost in the first place, and how the share of it is worked out. */
  enum Loss {
    FAULTS,
    ALL_FAULTS,
    DIRT,
    ENERGY,
    REFRIGERANT;

    private static Loss of(String mode) {
      return switch (mode) {
        case "*" -> ALL_FAULTS;
        case "dirt" -> DIRT;
        case "energy" -> ENERGY;
        case "refrigerant" -> REFRIGERANT;
        default -> FAULTS;
      };
    }
  }

  /**
   * A share of one kind of loss that a task prevents.
   *
   * @param mode failure mode where the loss is faults of one
   */
  record Share(Loss loss, String mode, double share) {}

  private final Map<String, List<Effect>> byTask = new HashMap<>();
  // of the many tasks whose effects hang on no reason
  private final Map<String, List<Share>> always = new HashMap<>();

  private TaskEffects() {}

  static TaskEffects load(RuleTables tables, TaskCatalogue catalogue) {
    TaskEffects effects = new TaskEffects();
    for (Effect effect : tables.read(FILE, "effect", row -> effect(row, catalogue))) {
      effects.byTask.computeIfAbsent(effect.task, task -> new ArrayList<>()).add(effect);
    }
    effects.byTask.forEach(
        (task, its) -> {
          if (its.stream().allMatch(effect -> effect.when.isEmpty())) {
            effects.always.put(task, greatest(its, code -> false));
          }
        });
    return effects;
  }

  private static Effect effect(TableRow row, TaskCatalogue catalogue) {
    String task = row.required("task");
    if (!catalogue.has(task)) {
      throw new IllegalArgumentException("'" + task + "' is no task of " + TaskCatalogue.FILE);
    }
    return new Effect(
        task, row.required("mode"), row.text("when"), row.number("share", 0, 1), row.source());
  }

  /**
   * The greatest share by mode.
   *
   * @param reasons whether the task has a reason of that code
   */
  List<Share> shares(String task, Predicate<String> reasons) {
    List<Share> known = always.get(task);
    return known != null ? known : greatest(byTask.getOrDefault(task, List.of()), reasons);
  }

  private static List<Share> greatest(List<Effect> effects, Predicate<String> reasons) {
    Map<String, Double> shares = new LinkedHashMap<>();
    for (Effect effect : effects) {
      if (effect.when.isEmpty() || reasons.test(effect.when)) {
        shares.merge(effect.mode, effect.share, Math::max);
      }
    }
    List<Share> listed = new ArrayList<>(shares.size());
    shares.forEach((mode, share) -> listed.add(new Share(Loss.of(mode), mode, share)));
    return listed;
  }
}
