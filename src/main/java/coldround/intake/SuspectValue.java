package coldround.intake;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Doubted;
import coldround.fleet.Reading;
import java.util.Locale;

/** A value that was kept but is not believed, told for the sender of its row. */
final class SuspectValue {

  private SuspectValue() {}

  static RowProblem of(Doubted doubted, Entry entry, Heading heading) {
    boolean longForm = entry.said().containsKey("quantity");
    String column = longForm ? "value" : doubted.column();
    Reading reading = (Reading) entry.said().get(column);
    String value =
        reading == null || reading.value() == null ? "" : number(reading.value().value());
    String message =
        "%s It is kept, but left out of every computation. Correct it, or confirm it by a mark: %s!"
            .formatted(doubted.why(), value);
    return new RowProblem(
        entry.line(), heading.label(column), value, ProblemCode.SUSPECT_VALUE, message);
  }

  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? String.format(Locale.ROOT, "%.0f", value)
        : Double.toString(value);
  }
}
