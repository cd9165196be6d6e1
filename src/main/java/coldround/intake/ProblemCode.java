package coldround.intake;

import java.util.Locale;

/** Stable name of a kind of problem, and whether its row can still be taken. */
public enum ProblemCode {
  NOT_A_DATE(true),
  AMBIGUOUS_DATE(true),
  NOT_A_NUMBER(true),
  NOT_TEXT(true),
  TOO_LONG(true),
  OUT_OF_RANGE(true),
  UNKNOWN_CODE(true),
  UNKNOWN_MEASURE(true),
  UNKNOWN_ZONE(true),
  UNKNOWN_COUNTRY(true),
  NOT_HOURS(true),
  REASON_MISSING(true),
  NOT_ERASABLE(true),
  MISSING(true),
  CONTRADICTION(true),
  TOO_MANY_CELLS(true),
  BROKEN_ROW(true),
  UNKNOWN_REFERENCE(true),
  TAG_TAKEN(true),

  TOO_FEW_CELLS(false),
  MENDED_ROW(false),
  UNKNOWN_COLUMN(false),
  MEASURE_ASSUMED(false),
  UNKNOWN_REFRIGERANT(false),
  DUPLICATE_IN_FILE(false),
  SUSPECT_VALUE(false),
  SERIAL_DATE(false),
  DATE_ORDER_FOUND(false),
  TWO_DIGIT_YEARS(false),
  DIGITS_LOST(false);

  private final boolean rejects;

  ProblemCode(boolean rejects) {
    this.rejects = rejects;
  }

  /** True when the row cannot be taken; false for a warning about a row that was taken. */
  public boolean rejects() {
    return rejects;
  }

  /** As in receipts: "not-a-date". */
  public String text() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
