package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A reason as a person reads it.
 *
 * @param text the sentence
 * @param facts what went into it
 * @param source table, row and what it cites
 */
public record Told(String text, List<Fact> facts, String source) {

  private static final Pattern DAY =
      Pattern.compile("\\b\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])\\b");

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
    return new Told(sentence(reason.text(system)), facts, reason.source().toString());
  }

  /** With its days told as everywhere on a page. */
  public static String sentence(String text) {
    String told = DAY.matcher(text).replaceAll(day -> Figures.day(LocalDate.parse(day.group())));
    return told.isEmpty()
        ? told
        : told.substring(0, 1).toUpperCase(Locale.ROOT) + told.substring(1);
  }

  private static String fact(Object fact, MeasureSystem system) {
    if (fact instanceof Quantity quantity) {
      return Figures.quantity(quantity, system);
    }
    return fact instanceof LocalDate day ? Figures.day(day) : String.valueOf(fact);
  }
}
