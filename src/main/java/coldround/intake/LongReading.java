package coldround.intake;

import coldround.fleet.Entry;
import coldround.fleet.Reading;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One row of the long form of readings: quantity, part, value, measure and not_taken together. */
final class LongReading {

  /** Takes what is wrong under the column it is wrong in. */
  @FunctionalInterface
  interface ColumnRefusals {
    void add(String column, ProblemCode code, String message);
  }

  private static final List<String> OWN =
      List.of("quantity", "part", "value", "measure", "not_taken");

  private final CellRules rules;

  LongReading(CellRules rules) {
    this.rules = rules;
  }

  /** Puts the reading that the cells make in the place of the cells. */
  void assemble(Map<String, Object> said, ColumnRefusals refusals) {
    String quantity = Profile.plain(text(said, "quantity"));
    Column column = rules.readings().get(quantity);
    if (column == null) {
      refusals.add("quantity", ProblemCode.UNKNOWN_CODE, unknown(text(said, "quantity")));
      return;
    }
    Object value = said.get("value");
    Object reading =
        value == Entry.ERASED ? erased(said, refusals) : reading(column, said, refusals);
    OWN.forEach(said::remove);
    said.put("quantity", quantity);
    if (reading != null) {
      said.put(value == Entry.ERASED ? quantity : "value", reading);
    }
  }

  private static String text(Map<String, Object> said, String column) {
    Object value = said.get(column);
    return value instanceof String text ? text : "";
  }

  private static Object erased(Map<String, Object> said, ColumnRefusals refusals) {
    if (text(said, "part").isEmpty()) {
      return Entry.ERASED;
    }
    refusals.add(
        "value",
        ProblemCode.NOT_ERASABLE,
        "the reading of one part cannot be erased; correct it, or write n/t: and the reason.");
    return null;
  }

  private Reading reading(Column column, Map<String, Object> said, ColumnRefusals refusals) {
    String part = text(said, "part");
    String value = text(said, "value");
    String why = text(said, "not_taken");
    if (value.isEmpty() == why.isEmpty()) {
      refusals.add(
          "value",
          value.isEmpty() ? ProblemCode.MISSING : ProblemCode.CONTRADICTION,
          "a row has either a value or, in not_taken, the reason why there is none. Fill one.");
      return null;
    }
    if (ReadingCell.isNotTaken(value)) {
      why = ReadingCell.reason(value, (code, message) -> refusals.add("value", code, message));
    }
    if (why == null || !why.isEmpty()) {
      return why == null ? null : new Reading(column.name(), part, null, why, "");
    }
    Quantity measured =
        measured(column, ReadingCell.number(value), text(said, "measure"), refusals);
    if (measured == null) {
      return null;
    }
    Reading reading = new Reading(column.name(), part, measured, "", "");
    return ReadingCell.isConfirmed(value) ? reading.asConfirmed() : reading;
  }

  private Quantity measured(Column column, String value, String measure, ColumnRefusals refusals) {
    Optional<Measure> named = rules.measure(measure).filter(column::accepts);
    if (named.isEmpty()) {
      boolean empty = measure.isEmpty();
      refusals.add(
          "measure",
          empty ? ProblemCode.MISSING : ProblemCode.UNKNOWN_MEASURE,
          (empty
                  ? "the unit of measure is missing"
                  : "'" + RowProblem.shown(measure) + "' does not fit")
              + ". Write %s for %s, or another unit of its kind."
                  .formatted(column.measure(), column.name()));
      return null;
    }
    return new MeasuredCell(column, named.get(), rules)
        .quantity(value, (code, message) -> refusals.add("value", code, message));
  }

  private String unknown(String text) {
    String nearest =
        Nearest.to(Profile.plain(text), rules.readings().keySet())
            .map(name -> " Did you mean " + name + "?")
            .orElse("");
    return "'%s' is no reading.%s Known are: %s."
        .formatted(
            RowProblem.shown(text),
            nearest,
            String.join(", ", rules.readings().keySet().stream().sorted().toList()));
  }
}
