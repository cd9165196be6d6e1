package coldround.intake;

import java.util.Optional;

/**
 * What the dates of one column prove of their order.
 *
 * @param dayFirst a date whose first number can only be the day; empty for none
 * @param monthFirst a date whose second number can only be the day; empty for none
 */
public record DateEvidence(String dayFirst, String monthFirst) {

  /** Nothing proven. */
  public static final DateEvidence NONE = new DateEvidence("", "");

  private static final int MONTHS = 12;

  /** The one order that is proven; empty where none is, or both are. */
  Optional<DateOrder> order() {
    if (dayFirst.isEmpty() == monthFirst.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(dayFirst.isEmpty() ? DateOrder.MONTH_DAY_YEAR : DateOrder.DAY_MONTH_YEAR);
  }

  /** With what one more cell of the column proves. */
  DateEvidence and(String cell) {
    DateParts parts = DateParts.of(cell);
    if (parts == null || !parts.yearLast() || parts.mayStartWithYear()) {
      return this;
    }
    if (dayFirst.isEmpty() && parts.first() > MONTHS && parts.second() <= MONTHS) {
      return new DateEvidence(cell, monthFirst);
    }
    if (monthFirst.isEmpty() && parts.second() > MONTHS && parts.first() <= MONTHS) {
      return new DateEvidence(dayFirst, cell);
    }
    return this;
  }

  /** The date that proves the order. */
  String proof() {
    return RowProblem.shown(dayFirst.isEmpty() ? monthFirst : dayFirst);
  }

  /** Why a date that can be two days is not read. */
  String whyNot() {
    return dayFirst.isEmpty()
        ? "and no date of the column proves the order"
        : "and the column has both orders, as '%s' and '%s' show"
            .formatted(RowProblem.shown(dayFirst), RowProblem.shown(monthFirst));
  }
}
