package coldround.intake;

/** Reads the filled cells of one column. */
@FunctionalInterface
interface CellReader {

  /**
   * @param text the cell, trimmed, not empty
   * @return the value as an entry holds it; null when the cell is refused, which is then told
   */
  Object read(String text, Refusals refusals);
}
