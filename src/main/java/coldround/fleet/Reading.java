package coldround.fleet;

import coldround.quantity.Quantity;
import java.util.Objects;

/**
 * One measured quantity of a visit: a value, or not taken with the reason.
 *
 * @param quantity name of the visit column, such as head_pressure
 * @param part which one, where there are several (a fan number); empty otherwise
 * @param value null when not taken
 * @param notTaken why there is no value; empty when there is one
 * @param suspect why the value is not believed and left out until somebody confirms it; empty when
 *     it is used
 * @param confirmed true when its writer has said that the value is meant, however odd it looks
 */
public record Reading(
    String quantity,
    String part,
    Quantity value,
    String notTaken,
    String suspect,
    boolean confirmed) {

  /**
   * @throws IllegalArgumentException when there is neither a value nor a reason, or both
   */
  public Reading {
    Objects.requireNonNull(quantity);
    if ((value == null) == notTaken.isEmpty()) {
      throw new IllegalArgumentException(
          quantity + " needs either a value or the reason why it was not taken");
    }
  }

  /** A reading that nobody has confirmed. */
  public Reading(String quantity, String part, Quantity value, String notTaken, String suspect) {
    this(quantity, part, value, notTaken, suspect, false);
  }

  public static Reading taken(String quantity, Quantity value) {
    return new Reading(quantity, "", value, "", "");
  }

  public static Reading notTaken(String quantity, String why) {
    return new Reading(quantity, "", null, why, "");
  }

  /** The same value, meant as it is. */
  public Reading asConfirmed() {
    return new Reading(quantity, part, value, notTaken, "", value != null);
  }

  /**
   * The same value, not believed.
   *
   * @param why empty to believe it again
   */
  public Reading doubted(String why) {
    return why.equals(suspect)
        ? this
        : new Reading(quantity, part, value, notTaken, why, confirmed);
  }

  /** True when there is a value that may be computed with. */
  public boolean usable() {
    return value != null && suspect.isEmpty();
  }
}
