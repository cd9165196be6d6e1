package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;

/**
 * A reason as a person reads it.
 *
 * @param text the sentence
 * @param facts what went into it
 * @param source table, row and what it cites
 */
public record Told(String text, List<Fact> facts, String source) {

  /** A name and what stands behind it. */
  public record Fact(String name, String value) {}

  public Told {
    facts = List.copyOf(facts);
  }

  public static Told of(Reason reason, MeasureSystem system) {
    List<Fact> facts =
        reason.inputs().entrySet().stream()
            .map(input -> new Fact(Words.title(input.getKey()), fact(input.getValue(), system)))
            .toList();
    return new Told(reason.text(system), facts, reason.source().toString());
  }

  private static String fact(Object fact, MeasureSystem system) {
    if (fact instanceof Quantity quantity) {
      return Figures.quantity(quantity, system);
    }
    return fact instanceof LocalDate day ? Figures.day(day) : String.valueOf(fact);
  }
}
