package coldround.intake;

import coldround.sheet.Row;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Reads a file a first time for what its dates prove of their order, and that only when a date that
 * can be two days asks for it.
 */
public final class DateScan implements Function<String, DateEvidence> {

  private static final Set<ColumnType> DATES = EnumSet.of(ColumnType.DATE, ColumnType.DAYS);

  private final Supplier<TableFile> opening;
  private Map<String, DateEvidence> found;

  /**
   * @param opening opens the file anew
   */
  public DateScan(Supplier<TableFile> opening) {
    this.opening = opening;
  }

  @Override
  public DateEvidence apply(String column) {
    if (found == null) {
      found = scan();
    }
    return found.getOrDefault(column, DateEvidence.NONE);
  }

  private Map<String, DateEvidence> scan() {
    Map<String, DateEvidence> evidence = new HashMap<>();
    try (TableFile table = opening.get()) {
      while (table.rows().hasNext()) {
        note(table.rows().next(), table.heading(), evidence);
      }
    }
    return evidence;
  }

  private static void note(Row row, Heading heading, Map<String, DateEvidence> evidence) {
    for (int i = 0; i < heading.slots().size() && row.isReliable(); i++) {
      Heading.Slot slot = heading.slots().get(i);
      int place = heading.places().get(i);
      boolean date = slot != null && DATES.contains(slot.column().type());
      if (date && place >= 0 && place < row.cells().size()) {
        for (String cell : Cell.content(row.cells().get(place)).split(";")) {
          String day = cell.strip();
          evidence.merge(
              slot.column().name(), DateEvidence.NONE.and(day), (old, one) -> old.and(day));
        }
      }
    }
  }
}
