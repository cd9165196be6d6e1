package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.List;

/** Names a misplaced quote. */
final class QuoteFault {

  private QuoteFault() {}

  /** For a record read with its misplaced quotes taken literally. */
  static Fault of(List<String> cells, int strays) {
    for (int i = 0; i < cells.size(); i++) {
      if (cells.get(i).startsWith("\"") || cells.get(i).startsWith("'")) {
        String message = "cell " + (i + 1) + " begins with a quote that is never closed";
        return Fault.open(Code.UNCLOSED_QUOTE, message);
      }
    }
    return stray(Math.max(1, strays), true);
  }

  static Fault stray(int count, boolean certain) {
    String message =
        (count == 1 ? "a quote stands" : count + " quotes stand")
            + " where none may; taken as part of the cell";
    return new Fault(Code.STRAY_QUOTE, message, certain);
  }
}
