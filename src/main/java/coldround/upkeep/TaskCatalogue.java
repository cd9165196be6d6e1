package coldround.upkeep;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** The kinds of upkeep task of scoring/tasks.csv, in the order of the table. */
public final class TaskCatalogue {

  static final String FILE = "tasks.csv";
  private static final Set<String> SKILLS = Set.of("", "electrical", "refrigerant");

  private final Map<String, TaskKind> byCode = new LinkedHashMap<>();

  private TaskCatalogue() {}

  /**
   * @param kinds kinds of unit that there are
   */
  static TaskCatalogue load(RuleTables tables, Set<String> kinds) {
    TaskCatalogue catalogue = new TaskCatalogue();
    tables
        .read(FILE, "task", row -> kind(row, kinds))
        .forEach(kind -> catalogue.byCode.put(kind.code(), kind));
    for (String needed : TaskCode.ALL) {
      if (!catalogue.byCode.containsKey(needed)) {
        tables.problem(FILE, 0, "task", "the row '" + needed + "' is missing");
      }
    }
    return catalogue;
  }

  private static TaskKind kind(TableRow row, Set<String> kinds) {
    String skill = row.text("skill");
    if (!SKILLS.contains(skill)) {
      throw new IllegalArgumentException("'" + skill + "' is no competence; known are " + SKILLS);
    }
    return new TaskKind(
        row.required("task"),
        row.required("name"),
        row.whole("minutes"),
        skill,
        KindSet.of(row, "kinds", kinds),
        row.whole("before"),
        row.whole("after"),
        row.text("season").equals("yes"),
        row.codes("done_work"),
        row.codes("done_findings"),
        row.codes("done_readings"),
        row.codes("done_purposes"),
        row.codes("tools"),
        row.codes("materials"),
        row.codes("cautions"),
        row.source());
  }

  public Collection<TaskKind> all() {
    return Collections.unmodifiableCollection(byCode.values());
  }

  /**
   * @throws IllegalArgumentException for a code that the table does not have
   */
  public TaskKind get(String code) {
    TaskKind kind = byCode.get(code);
    if (kind == null) {
      throw new IllegalArgumentException("no task '" + code + "' in " + FILE);
    }
    return kind;
  }

  boolean has(String code) {
    return byCode.containsKey(code);
  }
}
