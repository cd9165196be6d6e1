package coldround.reason;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Why an answer is as it is: a stable code, the facts used, and a sentence that is made only when
 * somebody reads it, in that reader's units.
 *
 * @param code stable for programs, such as "past-median-life"
 * @param template sentence with {name} where a fact goes
 * @param inputs facts by name: {@link Quantity}, {@link LocalDate}, whole number or text
 * @param source row of the table that decided
 */
public record Reason(String code, String template, Map<String, Object> inputs, Source source) {

  private static final Pattern NAME = Pattern.compile("\\{(\\w+)\\}");
  // sentences are few and written in code, reasons are many
  private static final Map<String, List<String>> NAMES = new ConcurrentHashMap<>();

  /**
   * @throws IllegalArgumentException when the sentence names a fact that is not there
   */
  public Reason {
    Inputs facts = Inputs.copyOf(inputs);
    inputs = facts;
    for (int i = 0; i < facts.size(); i++) {
      check(facts.name(i), facts.fact(i));
    }
    List<String> named = NAMES.get(template);
    for (String name : named != null ? named : NAMES.computeIfAbsent(template, Reason::names)) {
      if (!inputs.containsKey(name)) {
        throw new IllegalArgumentException("no fact {" + name + "} for " + code);
      }
    }
  }

  private static List<String> names(String template) {
    return NAME.matcher(template).results().map(found -> found.group(1)).toList();
  }

  private static void check(String name, Object fact) {
    if (!(fact instanceof Quantity
        || fact instanceof LocalDate
        || fact instanceof String
        || fact instanceof Integer
        || fact instanceof Long)) {
      throw new IllegalArgumentException("fact " + name + " has no known type: " + fact);
    }
  }

  /** The sentence in the units asked for. */
  public String text(MeasureSystem system) {
    return NAME.matcher(template)
        .replaceAll(m -> Matcher.quoteReplacement(told(inputs.get(m.group(1)), system)));
  }

  private static String told(Object fact, MeasureSystem system) {
    return fact instanceof Quantity quantity
        ? quantity.in(system).toString()
        : String.valueOf(fact);
  }
}
