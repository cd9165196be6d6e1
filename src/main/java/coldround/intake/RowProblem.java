package coldround.intake;

import java.util.Objects;

/**
 * One thing about a row that its sender should know.
 *
 * @param row line of the file where the record starts, the header being 1
 * @param column header of the column as it stands in the file; empty when it concerns the row
 * @param value the cell, shortened where it is long
 * @param message what is wrong and how to mend it
 */
public record RowProblem(long row, String column, String value, ProblemCode code, String message) {

  private static final int SHOWN = 80;

  public RowProblem {
    Objects.requireNonNull(code);
    column = shown(column);
    value = shown(value);
  }

  public boolean rejects() {
    return code.rejects();
  }

  /** A text from a file as it can be shown in one line: short and without control characters. */
  public static String shown(String text) {
    int end = Math.min(SHOWN, text.length());
    boolean cutsPair = end < text.length() && Character.isHighSurrogate(text.charAt(end - 1));
    String start = text.substring(0, cutsPair ? end - 1 : end);
    String printable =
        start.codePoints().noneMatch(Character::isISOControl) ? start : blanked(start);
    return end < text.length() ? printable + "…" : printable;
  }

  private static String blanked(String text) {
    StringBuilder blanked = new StringBuilder(text);
    for (int i = 0; i < blanked.length(); i++) {
      if (Character.isISOControl(blanked.charAt(i))) {
        blanked.setCharAt(i, '\uFFFD');
      }
    }
    return blanked.toString();
  }
}
