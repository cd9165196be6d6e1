package coldround.table;

/**
 * One thing wrong with a rule table, with what is needed to mend it.
 *
 * @param file path of the table as the reader knows it
 * @param line line of the row, the header being 1; 0 when it concerns the whole file
 * @param column column concerned, empty when it concerns the row
 * @param message what is wrong and what is expected
 */
public record TableProblem(String file, long line, String column, String message) {

  @Override
  public String toString() {
    String place = line > 0 ? file + ", line " + line : file;
    return (column.isEmpty() ? place : place + ", column " + column) + ": " + message;
  }
}
