package coldround.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.function.Function;

/**
 * One column of a table, and how its value is got from a row.
 *
 * @param type as SQL has it
 * @param element the same as the driver of PostgreSQL calls it
 */
public record Column<T>(String name, String type, String element, Function<T, Object> value) {

  public static <T> Column<T> text(String name, Function<T, String> value) {
    return new Column<>(name, "varchar", "varchar", value::apply);
  }

  public static <T> Column<T> id(String name, Function<T, Long> value) {
    return new Column<>(name, "bigint", "bigint", value::apply);
  }

  public static <T> Column<T> whole(String name, Function<T, Integer> value) {
    return new Column<>(name, "integer", "integer", value::apply);
  }

  public static <T> Column<T> number(String name, Function<T, Double> value) {
    return new Column<>(name, "double precision", "float8", value::apply);
  }

  public static <T> Column<T> day(String name, Function<T, LocalDate> value) {
    return new Column<>(name, "date", "date", value::apply);
  }

  public static <T> Column<T> moment(String name, Function<T, Instant> value) {
    return new Column<>(
        name,
        "timestamp with time zone",
        "timestamptz",
        row -> value.apply(row).atOffset(ZoneOffset.UTC));
  }
}
