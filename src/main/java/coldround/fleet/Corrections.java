package coldround.fleet;

import java.util.List;

/** What was corrected, newest first. */
public interface Corrections {

  /**
   * Which are asked for; an empty field asks for all.
   *
   * @param unit id of the unit
   * @param origin id of the import
   */
  record Filter(String unit, String origin) {
    public Filter {
      unit = unit == null ? "" : unit;
      origin = origin == null ? "" : origin;
    }
  }

  /**
   * @param before only those with a smaller id
   */
  List<Correction> find(Filter filter, long before, int limit);
}
