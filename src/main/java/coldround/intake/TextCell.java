package coldround.intake;

import coldround.sheet.ExcelCells;

/** Free text of limited length, without control characters but line breaks and tabs. */
record TextCell(int most) implements CellReader {

  static TextCell of(Column column) {
    return new TextCell(Integer.parseInt(column.greatest()));
  }

  @Override
  public Object read(String text, Refusals refusals) {
    if (text.length() > most) {
      refusals.add(
          ProblemCode.TOO_LONG,
          "the text has %d characters; at most %d are kept. Shorten it."
              .formatted(text.length(), most));
      return null;
    }
    if (ExcelCells.hasLostDigits(text)) {
      refusals.add(
          ProblemCode.DIGITS_LOST,
          "'%s' is how a spreadsheet shows a long number; its last digits are lost. It is kept so."
              .formatted(text));
    }
    return isPrintable(text) ? text : refuse(text, refusals);
  }

  private static boolean isPrintable(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t') {
        return false;
      }
    }
    return true;
  }

  private static Object refuse(String text, Refusals refusals) {
    refusals.add(
        ProblemCode.NOT_TEXT,
        "'%s' holds control characters that cannot be shown. Type the text anew."
            .formatted(RowProblem.shown(text)));
    return null;
  }
}
