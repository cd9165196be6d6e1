package coldround.field;

/**
 * One reading as it was sent. What was not said is empty.
 *
 * @param path where it stands in what was sent, as a JSON pointer (RFC 6901)
 * @param value number as it was written
 * @param measure code of the unit of measure
 * @param notTaken why there is no value
 */
public record FieldReading(
    String path, String quantity, String part, String value, String measure, String notTaken) {

  /** True when it speaks of the same quantity of the same part. */
  boolean sameAs(FieldReading other) {
    return quantity.equals(other.quantity) && part.equals(other.part);
  }
}
