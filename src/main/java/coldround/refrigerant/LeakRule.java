package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One row of scoring/leak-rules.csv.
 *
 * @param gas ods, hfc or both
 * @param topic threshold, repair, chronic, annualizing, rolling, first-addition, short-interval,
 *     scope, or information for a row that is only to be read
 * @param value null for a row that is only to be read
 * @param due day of the next year by which a report is due, null for none
 */
record LeakRule(
    String id,
    String gas,
    String topic,
    List<String> categories,
    LocalDate from,
    BigDecimal chargeFromKg,
    BigDecimal gwpAbove,
    BigDecimal value,
    MonthDay due,
    String legalReference,
    Source source) {

  static final String FILE = "leak-rules.csv";
  private static final Set<String> VALUED =
      Set.of(
          "threshold",
          "repair",
          "chronic",
          "annualizing",
          "rolling",
          "first-addition",
          "short-interval");
  private static final Set<String> TOPICS =
      Set.of(
          "threshold",
          "repair",
          "chronic",
          "annualizing",
          "rolling",
          "first-addition",
          "short-interval",
          "scope",
          "information");
  // the measure each value has, so that a percentage cannot stand where days belong
  private static final Map<String, String> MEASURES =
      Map.of(
          "threshold",
          "%/a",
          "chronic",
          "%",
          "repair",
          "d",
          "annualizing",
          "d",
          "rolling",
          "d",
          "first-addition",
          "d",
          "short-interval",
          "d");

  static List<LeakRule> read(RuleTables tables) {
    return tables.read(FILE, "rule", LeakRule::rule);
  }

  private static LeakRule rule(TableRow row) {
    String topic = row.oneOf("topic", TOPICS);
    if (VALUED.contains(topic)) {
      row.number("value", 0, 1000);
      row.oneOf("measure", Set.of(MEASURES.get(topic)));
    }
    return new LeakRule(
        row.required("rule"),
        row.oneOf("gas", Set.of("ods", "hfc", "both")),
        topic,
        categories(row),
        row.optionalDate("applies_from").orElse(LocalDate.MIN),
        LeakScope.decimal(row, "charge_from_lb", ExactMass::pounds),
        LeakScope.decimal(row, "gwp_above", BigDecimal::valueOf),
        LeakScope.decimal(row, "value", BigDecimal::valueOf),
        due(row),
        row.required("legal_reference"),
        LeakScope.source(row));
  }

  private static List<String> categories(TableRow row) {
    List<String> categories = row.codes("categories");
    if (!UnitCategories.LEAK_CATEGORIES.containsAll(categories)) {
      throw new IllegalArgumentException(
          categories + " are not all among " + UnitCategories.LEAK_CATEGORIES);
    }
    return categories;
  }

  private static MonthDay due(TableRow row) {
    String text = row.text("due_month_day");
    try {
      return text.isEmpty() ? null : MonthDay.parse(text);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException("'" + text + "' is not a day such as --03-01");
    }
  }
}
