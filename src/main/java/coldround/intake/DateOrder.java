package coldround.intake;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** In which order a date is written. */
public enum DateOrder {
  /** Year first, or the order that the dates of the column prove together. */
  FROM_COLUMN("2026-05-31"),
  YEAR_MONTH_DAY("2026-05-31"),
  DAY_MONTH_YEAR("31/05/2026"),
  MONTH_DAY_YEAR("05/31/2026");

  private final String example;

  DateOrder(String example) {
    this.example = example;
  }

  /** As in profiles: "day-month-year". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The last day of May 2026, so written. */
  public String example() {
    return example;
  }

  /** The order to ask for: a column alone proves none to whoever mends one cell of it. */
  DateOrder asked() {
    return this == FROM_COLUMN ? YEAR_MONTH_DAY : this;
  }

  public static Optional<DateOrder> find(String code) {
    return Arrays.stream(values()).filter(order -> order.code().equals(code)).findFirst();
  }
}
