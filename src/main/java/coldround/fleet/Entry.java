package coldround.fleet;

import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What one row of a list says: its columns with values already checked. A column it is silent about
 * is not there.
 *
 * @param line line of the file, 0 for one that came by a call
 * @param said by column name: String, {@link LocalDate}, {@link java.time.OffsetDateTime} for a day
 *     that depends on the zone of the site, {@link ZoneId}, Double, {@link Quantity}, List of
 *     codes, List of {@link DaySpan}, {@link Reading}, {@link Grade} or {@link #ERASED}
 */
public record Entry(long line, Map<String, Object> said) {

  /** Said of a column whose stored value is to be emptied. */
  public static final Object ERASED =
      new Object() {
        @Override
        public String toString() {
          return "-";
        }
      };

  /** The grade of one part of a unit on a visit. */
  public record Grade(String grade) {}

  public Entry {
    said = Collections.unmodifiableMap(new LinkedHashMap<>(said));
  }

  /** A column that must be there, such as part of the natural key. */
  public String key(String column) {
    return (String) said.get(column);
  }

  public String text(String column, String stored) {
    return value(column, stored, "");
  }

  public LocalDate date(String column, LocalDate stored) {
    return value(column, stored, null);
  }

  public Double number(String column, Double stored) {
    return value(column, stored, null);
  }

  public Quantity quantity(String column, Quantity stored) {
    return value(column, stored, null);
  }

  public ZoneId zone(String column, ZoneId stored) {
    return value(column, stored, null);
  }

  public List<String> codes(String column, List<String> stored) {
    return value(column, stored, List.of());
  }

  public List<DaySpan> days(String column, List<DaySpan> stored) {
    return value(column, stored, List.of());
  }

  /** True when it is this entry that names the reading, whatever became of its value. */
  public boolean says(Reading reading) {
    Object value = said.get(said.containsKey("quantity") ? "value" : reading.quantity());
    return value instanceof Reading own
        && own.quantity().equals(reading.quantity())
        && own.part().equals(reading.part());
  }

  @SuppressWarnings("unchecked")
  private <T> T value(String column, T stored, T empty) {
    Object value = said.get(column);
    if (value == null) {
      return stored;
    }
    return value == ERASED ? empty : (T) value;
  }
}
