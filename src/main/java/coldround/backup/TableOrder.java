package coldround.backup;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Tables in an order in which each comes behind those that its rows refer to. */
public final class TableOrder {

  private final Map<String, Set<String>> references;
  private final Set<String> done = new LinkedHashSet<>();
  private final Set<String> open = new LinkedHashSet<>();

  private TableOrder(Map<String, Set<String>> references) {
    this.references = references;
  }

  /**
   * @param references tables that each table refers to; a table may refer to itself
   * @throws IllegalArgumentException when tables refer to each other in a ring
   */
  public static List<String> of(Map<String, Set<String>> references) {
    TableOrder order = new TableOrder(references);
    references.keySet().stream().sorted().forEach(order::take);
    return new ArrayList<>(order.done);
  }

  private void take(String table) {
    if (done.contains(table)) {
      return;
    }
    if (!open.add(table)) {
      throw new IllegalArgumentException("tables refer to each other in a ring: " + open);
    }
    references.getOrDefault(table, Set.of()).stream()
        .filter(other -> !other.equals(table))
        .sorted()
        .forEach(this::take);
    open.remove(table);
    done.add(table);
  }
}
