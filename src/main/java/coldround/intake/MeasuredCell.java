package coldround.intake;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number in the unit of measure of its column, or with one behind it: "148" or "148 psig". */
final class MeasuredCell implements CellReader {

  private static final Pattern WITH_MEASURE =
      Pattern.compile("([-+\u2212]?[0-9.,]+)\\s*([^\\s0-9.,]\\S*)");

  private final Column column;
  private final Measure measure;
  private final Limits limits;
  private final CellRules rules;

  MeasuredCell(Column column, Measure measure, CellRules rules) {
    this.column = column;
    this.measure = measure;
    this.limits = Limits.of(column, measure);
    this.rules = rules;
  }

  @Override
  public Object read(String text, Refusals refusals) {
    return quantity(text, refusals);
  }

  /** True for a word of the profile that says that nothing was read. */
  boolean saysNotTaken(String text) {
    return rules.profile().saysNotTaken(text);
  }

  /** Null when refused. */
  Quantity quantity(String text, Refusals refusals) {
    double value = Numbers.parse(text, rules.profile().decimalSign());
    if (Double.isNaN(value)) {
      return withMeasure(text, refusals);
    }
    if (!limits.hold(value)) {
      refusals.add(ProblemCode.OUT_OF_RANGE, limits.refusal(text, measure));
      return null;
    }
    return new Quantity(value, measure);
  }

  private Quantity withMeasure(String text, Refusals refusals) {
    Matcher matcher = WITH_MEASURE.matcher(text);
    if (!matcher.matches()) {
      return notANumber(text, refusals);
    }
    Optional<Measure> named = rules.measure(matcher.group(2));
    if (named.isEmpty() || !column.accepts(named.get())) {
      return named.isEmpty() ? notANumber(text, refusals) : otherDimension(named.get(), refusals);
    }
    return new MeasuredCell(column, named.get(), rules).number(matcher.group(1), text, refusals);
  }

  private Quantity number(String number, String cell, Refusals refusals) {
    boolean is = !Double.isNaN(Numbers.parse(number, rules.profile().decimalSign()));
    return is ? quantity(number, refusals) : notANumber(cell, refusals);
  }

  private Quantity notANumber(String text, Refusals refusals) {
    String example = column.example().isEmpty() ? "1" : column.example();
    refusals.add(
        ProblemCode.NOT_A_NUMBER,
        Numbers.refusal(text, rules.profile().decimalSign(), example + " in " + measure)
            + (column.type() == ColumnType.READING ? " If it was not read: n/t: reason." : ""));
    return null;
  }

  private Quantity otherDimension(Measure named, Refusals refusals) {
    refusals.add(
        ProblemCode.UNKNOWN_MEASURE,
        "%s does not measure what %s does. Give %s in %s or a unit that converts to it."
            .formatted(named, measure, column.name(), measure));
    return null;
  }
}
