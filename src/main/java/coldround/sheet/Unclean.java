package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.ArrayList;
import java.util.List;

/** Marks rows that hold a NUL character or bytes that could not be decoded. */
final class Unclean {

  private Unclean() {}

  static Row row(long line, List<String> cells) {
    return new Row(line, cells, faults(cells));
  }

  static List<Fault> faults(List<String> cells) {
    List<Fault> faults = new ArrayList<>();
    int nul = first(cells, '\0');
    int lost = first(cells, '\uFFFD');
    if (nul >= 0) {
      faults.add(Fault.open(Code.NUL_CHARACTER, "cell " + (nul + 1) + " holds a NUL character"));
    }
    if (lost >= 0) {
      String message =
          "cell " + (lost + 1) + " holds bytes that are not text in the charset of the file";
      faults.add(Fault.open(Code.UNDECODABLE, message));
    }
    return faults;
  }

  private static int first(List<String> cells, char wrong) {
    for (int i = 0; i < cells.size(); i++) {
      if (cells.get(i).indexOf(wrong) >= 0) {
        return i;
      }
    }
    return -1;
  }
}
