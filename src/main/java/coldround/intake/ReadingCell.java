package coldround.intake;

import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import java.util.Locale;

/** A reading of a visit: a measured value, or "n/t: reason" where it was not taken. */
record ReadingCell(String quantity, MeasuredCell measured) implements CellReader {

  private static final String NOT_TAKEN = "n/t";
  private static final String CONFIRMS = "!";
  private static final int LONGEST_REASON = 400;

  @Override
  public Object read(String text, Refusals refusals) {
    if (isNotTaken(text)) {
      String why = reason(text, refusals);
      return why == null ? null : Reading.notTaken(quantity, why);
    }
    if (measured.saysNotTaken(text)) {
      return Reading.notTaken(quantity, text);
    }
    Quantity value = measured.quantity(number(text), refusals);
    if (value == null) {
      return null;
    }
    Reading taken = Reading.taken(quantity, value);
    return isConfirmed(text) ? taken.asConfirmed() : taken;
  }

  /** "148!" says that the value is meant, however odd it looks. */
  static boolean isConfirmed(String text) {
    return text.endsWith(CONFIRMS);
  }

  /** Without the mark that confirms it. */
  static String number(String text) {
    return isConfirmed(text) ? text.substring(0, text.length() - CONFIRMS.length()).strip() : text;
  }

  static boolean isNotTaken(String text) {
    return text.toLowerCase(Locale.ROOT).startsWith(NOT_TAKEN);
  }

  /** Null when refused. */
  static String reason(String text, Refusals refusals) {
    String behind = text.substring(NOT_TAKEN.length()).strip();
    String why = behind.startsWith(":") ? behind.substring(1).strip() : behind;
    if (why.isEmpty()) {
      refusals.add(
          ProblemCode.REASON_MISSING,
          "'n/t' says that it was not taken but not why. Write n/t: and the reason, such as"
              + " n/t: port blocked by shelving.");
      return null;
    }
    return (String) new TextCell(LONGEST_REASON).read(why, refusals);
  }
}
