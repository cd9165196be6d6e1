package coldround.sheet;

import java.util.ArrayList;
import java.util.List;

/** A header row brought to the width of its table. */
final class HeaderRow {

  /** Share of labels in common from which on a row is taken for another header. */
  private static final double AGAIN = 0.6;

  private HeaderRow() {}

  /** Takes out empty labels if there are too many, else cuts or fills up at the end. */
  static List<String> fitted(List<String> cells, int width) {
    List<String> fitted = cut(cells, width);
    while (fitted.size() < width) {
      fitted.add("");
    }
    return fitted;
  }

  /** Takes out empty labels if there are too many. */
  static List<String> cut(List<String> cells, int width) {
    List<String> fitted = new ArrayList<>(cells);
    while (fitted.size() > width && fitted.get(fitted.size() - 1).isBlank()) {
      fitted.remove(fitted.size() - 1);
    }
    for (int i = fitted.size() - 1; i >= 0 && fitted.size() > width; i--) {
      if (fitted.get(i).isBlank()) {
        fitted.remove(i);
      }
    }
    return fitted;
  }

  /** Whether a row below the header is a header again, of this table or of another one. */
  static boolean isAgain(Layout layout, List<String> cells) {
    for (List<String> header : layout.header()) {
      if (sharesFirstLabel(header, cells) && likeness(header, cells) >= AGAIN) {
        return true;
      }
    }
    return false;
  }

  private static boolean sharesFirstLabel(List<String> header, List<String> cells) {
    for (int i = 0; i < header.size(); i++) {
      if (!header.get(i).isBlank()) {
        return i < cells.size() && header.get(i).strip().equals(cells.get(i).strip());
      }
    }
    return false;
  }

  /** Labels that both rows have, as a share of the longer one's. */
  private static double likeness(List<String> one, List<String> other) {
    List<String> rest = new ArrayList<>(one.stream().map(String::strip).toList());
    int shared = 0;
    for (String label : other) {
      shared += !label.isBlank() && rest.remove(label.strip()) ? 1 : 0;
    }
    long longer = Math.max(filled(one), filled(other));
    return longer == 0 ? 0 : (double) shared / longer;
  }

  private static long filled(List<String> labels) {
    return labels.stream().filter(l -> !l.isBlank()).count();
  }
}
