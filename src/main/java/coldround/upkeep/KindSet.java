package coldround.upkeep;

import coldround.table.TableRow;
import java.util.List;
import java.util.Set;

/** The kinds of unit a row holds for: a list, or * for every kind, unknown ones included. */
public record KindSet(Set<String> kinds) {

  private static final String EVERY = "*";

  static KindSet of(TableRow row, String column, Set<String> known) {
    List<String> codes = row.codes(column);
    if (codes.isEmpty()) {
      throw new IllegalArgumentException(column + " must name kinds of unit, or * for every kind");
    }
    for (String code : codes) {
      if (!code.equals(EVERY) && !known.contains(code)) {
        throw new IllegalArgumentException("'" + code + "' is no kind of unit of kinds.csv");
      }
    }
    return new KindSet(Set.copyOf(codes));
  }

  public boolean named(String kind) {
    return kinds.contains(kind);
  }

  public boolean every() {
    return kinds.contains(EVERY);
  }

  public boolean contains(String kind) {
    return every() || named(kind);
  }
}
