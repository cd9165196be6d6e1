package coldround.intake;

import java.util.Arrays;
import java.util.List;

/** Several codes separated by semicolons, free ones where no list is named. */
final class CodesCell {

  private CodesCell() {}

  static CellReader of(Column column, CellRules rules) {
    if (!column.list().isEmpty()) {
      ChoiceCell choice = ChoiceCell.of(column, rules);
      return choice::codes;
    }
    TextCell text = TextCell.of(column);
    return (cell, refusals) -> free((String) text.read(cell, refusals));
  }

  private static List<String> free(String text) {
    return text == null
        ? null
        : Arrays.stream(text.split(";"))
            .map(String::strip)
            .filter(code -> !code.isEmpty())
            .distinct()
            .toList();
  }
}
