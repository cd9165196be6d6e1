package coldround.fleet;

import java.time.Instant;

/**
 * One value that a later file or call put in the place of a former one.
 *
 * @param id ascending with time
 * @param origin id of the import, or {@link #FIELD} or {@link #CONFIRMATION}
 * @param kind kind of list that the row belongs to
 * @param unitId empty for what is no unit's
 * @param item natural key of the row, behind that of its unit: the visit number, or day and failure
 *     mode of a fault
 * @param column of the standard form, with the part of a reading behind a slash
 * @param former as it would stand in a cell, with its unit of measure
 * @param later empty when it was emptied
 */
public record Correction(
    long id,
    Instant changed,
    String origin,
    Kind kind,
    String unitId,
    String item,
    String column,
    String former,
    String later) {

  /** Came as a visit from the field. */
  public static final String FIELD = "field";

  /** Somebody looked at a value that was not believed. */
  public static final String CONFIRMATION = "confirmation";
}
