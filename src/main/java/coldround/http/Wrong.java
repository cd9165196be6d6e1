package coldround.http;

import coldround.http.Problem.FieldError;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is wrong with a form that was sent, to be told at its fields. */
public record Wrong(List<FieldError> errors) {

  private static final Map<String, String> MUST =
      Map.of("is", "be", "lies", "lie", "has", "have", "names", "name");

  private static final Pattern ASKED =
      Pattern.compile(
          "(is|lies|has|names)(?! (?:no|not|null|missing|longer|of another|before|passed)\\b)"
              + "( .*)",
          Pattern.DOTALL);

  public static final Wrong NOTHING = new Wrong(List.of());

  public Wrong {
    errors = List.copyOf(errors);
  }

  /** What a problem says of fields; what it says as a whole, where it speaks of none. */
  public static Wrong of(Problem problem) {
    return problem.errors().isEmpty() ? saying(problem.getMessage()) : new Wrong(problem.errors());
  }

  /** Of no field alone. */
  public static Wrong saying(String sentence) {
    return new Wrong(List.of(new FieldError("", "", sentence)));
  }

  /** What is wrong with that field as a sentence, empty when nothing is. */
  public String at(String field) {
    return errors.stream()
        .filter(error -> name(error).equals(field))
        .map(error -> sentence(error.message()))
        .findFirst()
        .orElse("");
  }

  /** Sentences on no field of these. */
  public List<String> besides(List<String> fields) {
    return errors.stream()
        .filter(error -> !fields.contains(name(error)))
        .map(
            error ->
                name(error).isEmpty()
                    ? error.message()
                    : name(error) + ": " + sentence(error.message()))
        .toList();
  }

  public boolean any() {
    return !errors.isEmpty();
  }

  /**
   * Programs are told of a field what it is: "is a day such as 2026-05-31" is what is asked for,
   * "is no customer's code" what is wrong. A person at the field is told the same in whole
   * sentences.
   */
  static String sentence(String message) {
    if (message.isEmpty() || !Character.isLowerCase(message.charAt(0))) {
      return message;
    }
    String end = message.endsWith(".") ? "" : ".";
    Matcher asked = ASKED.matcher(message);
    return asked.matches()
        ? "This must " + MUST.get(asked.group(1)) + asked.group(2) + end
        : "This " + message + end;
  }

  private static String name(FieldError error) {
    return error.field().startsWith("/") ? error.field().substring(1) : error.field();
  }
}
