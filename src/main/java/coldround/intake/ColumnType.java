package coldround.intake;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** What the cells of a column hold, as named in import/columns.csv. */
public enum ColumnType {
  /** Name that others refer to. */
  CODE,
  TEXT,
  DATE,
  NUMBER,
  /** Number in a unit of measure. */
  MEASURED,
  /** Number in a unit of measure, or not taken with the reason. */
  READING,
  /** One code of a list. */
  CHOICE,
  /** Several codes of a list, or free ones. */
  CODES,
  /** Graded finding: one code of a list. */
  GRADE,
  ZONE,
  HOURS,
  /** Days and spans of days. */
  DAYS,
  JURISDICTION,
  REFRIGERANT,
  /** Name of a reading, in the long form. */
  QUANTITY,
  /** Which part was read, in the long form. */
  PART,
  /** Number or not taken, in the long form. */
  VALUE,
  /** Unit of measure, in the long form. */
  MEASURE;

  String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Set<String> codes() {
    return Arrays.stream(values()).map(ColumnType::code).collect(Collectors.toSet());
  }

  static ColumnType of(String code) {
    return valueOf(code.toUpperCase(Locale.ROOT));
  }

  boolean hasMeasure() {
    return this == MEASURED || this == READING;
  }
}
