package coldround.http;

import coldround.http.Problem.FieldError;
import java.util.List;

/** What is wrong with a form that was sent, to be told at its fields. */
public record Wrong(List<FieldError> errors) {

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

  /** What is wrong with that field, empty when nothing is. */
  public String at(String field) {
    return errors.stream()
        .filter(error -> name(error).equals(field))
        .map(FieldError::message)
        .findFirst()
        .orElse("");
  }

  /** Sentences on no field of these. */
  public List<String> besides(List<String> fields) {
    return errors.stream()
        .filter(error -> !fields.contains(name(error)))
        .map(
            error -> name(error).isEmpty() ? error.message() : name(error) + ": " + error.message())
        .toList();
  }

  public boolean any() {
    return !errors.isEmpty();
  }

  private static String name(FieldError error) {
    return error.field().startsWith("/") ? error.field().substring(1) : error.field();
  }
}
