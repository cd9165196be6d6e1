package coldround.intake;

import coldround.fleet.Kind;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The columns of the standard form of every kind of list. */
public final class Columns {

  private static final String FILE = "columns.csv";

  private final Map<Kind, Map<String, Column>> byKind = new EnumMap<>(Kind.class);

  private Columns(List<Column> columns) {
    for (Column column : columns) {
      byKind
          .computeIfAbsent(column.kind(), kind -> new LinkedHashMap<>())
          .put(column.name(), column);
    }
  }

  /** Reads import/columns.csv; what is wrong with it becomes problems of the tables. */
  public static Columns read(RuleTables tables, Codes codes, KnownRefrigerants refrigerants) {
    CellRules trial =
        new CellRules(
            codes,
            Profile.STANDARD,
            refrigerants,
            Map.of(),
            LocalDate.of(2026, 1, 1),
            column -> DateEvidence.NONE);
    List<Column> read =
        tables.read(
            FILE,
            List.of("kind", "column"),
            row -> {
              Column column = Column.of(row);
              CellReaders.reader(column, column.measure(), trial);
              return column;
            });
    Columns columns = new Columns(read);
    columns.checkKinds(tables);
    return columns;
  }

  private void checkKinds(RuleTables tables) {
    for (Kind kind : Kind.values()) {
      if (of(kind).stream().noneMatch(Column::isKey)) {
        tables.problem(FILE, 0, "kind", "there is no key column for " + kind.code());
      }
    }
  }

  /** In the order of the table. */
  public List<Column> of(Kind kind) {
    return List.copyOf(byKind.getOrDefault(kind, Map.of()).values());
  }

  public Optional<Column> find(Kind kind, String name) {
    return Optional.ofNullable(byKind.getOrDefault(kind, Map.of()).get(name));
  }

  /** The columns of visits that hold readings, by name: what the long form may name as quantity. */
  public Map<String, Column> readings() {
    Map<String, Column> readings = new LinkedHashMap<>();
    for (Column column : of(Kind.VISITS)) {
      if (column.type() == ColumnType.READING) {
        readings.put(column.name(), column);
      }
    }
    return readings;
  }

  /** Header line of the blank template of a kind. */
  public String template(Kind kind) {
    return String.join(",", of(kind).stream().map(Column::header).toList()) + "\r\n";
  }
}
