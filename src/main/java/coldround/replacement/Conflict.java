package coldround.replacement;

import java.util.List;

/** No plan keeps to all that was asked; says which demands do not go together. */
public final class Conflict extends RuntimeException {

  /**
   * One demand that cannot be met with the others.
   *
   * @param subject a year, or the id of a unit
   */
  public record Part(String subject, String message) {}

  private final transient List<Part> parts;

  Conflict(String message, List<Part> parts) {
    super(message);
    this.parts = List.copyOf(parts);
  }

  public List<Part> parts() {
    return parts;
  }
}
