package coldround.intake;

import java.util.ArrayList;
import java.util.List;

/** Codes of one list. */
record ChoiceCell(String list, CellRules rules) implements CellReader {

  static ChoiceCell of(Column column, CellRules rules) {
    if (rules.codes().list(column.list()).isEmpty()) {
      throw new IllegalArgumentException("codes.csv has no list '" + column.list() + "'");
    }
    return new ChoiceCell(column.list(), rules);
  }

  @Override
  public Object read(String text, Refusals refusals) {
    return code(text, refusals);
  }

  /** Null when refused. */
  String code(String text, Refusals refusals) {
    String meant = rules.profile().meant(list, text);
    String code = rules.codes().find(list, meant).orElse(null);
    if (code == null) {
      refusals.add(ProblemCode.UNKNOWN_CODE, rules.codes().unknown(list, text));
    }
    return code;
  }

  /** Several of them, each once, in their order; null when one is refused. */
  List<String> codes(String text, Refusals refusals) {
    List<String> codes = new ArrayList<>();
    boolean refused = false;
    for (String one : text.split(";")) {
      String code = one.isBlank() ? "" : code(one.strip(), refusals);
      refused |= code == null;
      if (code != null && !code.isEmpty() && !codes.contains(code)) {
        codes.add(code);
      }
    }
    return refused || codes.isEmpty() ? none(refused, text, refusals) : codes;
  }

  private List<String> none(boolean told, String text, Refusals refusals) {
    if (!told) {
      refusals.add(ProblemCode.UNKNOWN_CODE, rules.codes().unknown(list, text));
    }
    return null;
  }
}
