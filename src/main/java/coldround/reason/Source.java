package coldround.reason;

/**
 * Where a number comes from: the row of a rule table and what that row cites.
 *
 * @param table file name under scoring/
 * @param row key of the row in it
 * @param citation text of the row's source column
 */
public record Source(String table, String row, String citation) {

  /** One line: "service-life.csv, row walk-in-cooler: EIA 2023". */
  @Override
  public String toString() {
    return table + ", row " + row + ": " + citation;
  }
}
