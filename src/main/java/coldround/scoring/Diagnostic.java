package coldround.scoring;

import coldround.quantity.Quantity;

/**
 * One derived figure of a unit, or why it cannot be told.
 *
 * @param value null when it is not known
 * @param missing what would have to be read or entered to know it; empty when it is known
 */
public record Diagnostic(String name, Quantity value, String missing) {

  /**
   * @throws IllegalArgumentException when there is neither a value nor what is missing, or both
   */
  public Diagnostic {
    if ((value == null) == missing.isEmpty()) {
      throw new IllegalArgumentException(name + " needs either a value or what is missing");
    }
  }
}
