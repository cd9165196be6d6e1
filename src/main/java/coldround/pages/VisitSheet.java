package coldround.pages;

import java.util.List;

/**
 * The form of a visit, ready to be shown.
 *
 * @param number of the visit; made up for a new one
 * @param seen tag of the stored visit the form began with; empty for a new one
 * @param day the day it is, beyond which no visit lies
 * @param lost what became of the stored visit meanwhile; empty when nothing did
 * @param count how many fields are wrong, in words; empty when none is
 */
public record VisitSheet(
    String unitId,
    String tag,
    String kind,
    String place,
    String refrigerant,
    String number,
    String seen,
    boolean si,
    String day,
    Field own,
    Field date,
    Field technician,
    List<Pick> technicians,
    Graded purpose,
    List<Group> groups,
    List<Further> motors,
    Ticks work,
    Ticks faults,
    Field note,
    List<String> reasons,
    String lost,
    String count) {

  /**
   * A field with one text.
   *
   * @param wrong what is wrong with it; empty when nothing is
   */
  public record Field(String name, String value, String wrong, String stands) {}

  /** One of several to choose from. */
  public record Pick(String value, String label, String meaning, boolean chosen) {}

  /** One of a few. */
  public record Graded(
      String name,
      String label,
      List<Pick> picks,
      String wrong,
      String stands,
      List<VerdictView> says) {}

  /** Any of many. */
  public record Ticks(String name, List<Pick> picks, String wrong, String stands) {
    public boolean any() {
      return picks.stream().anyMatch(Pick::chosen);
    }
  }

  /**
   * A reading.
   *
   * @param hints nameplate, setting and the reading before
   * @param why in place of a value
   */
  public record Line(
      String name,
      String label,
      String measure,
      List<String> hints,
      Field value,
      Field why,
      List<VerdictView> says) {}

  /**
   * One of several motors of a kind.
   *
   * @param kinds of motors, the chosen one marked
   */
  public record Further(int row, List<Pick> kinds, Field part, Field value, Field why) {
    public boolean said() {
      return !value.value().isEmpty() || !why.value().isEmpty() || !value.wrong().isEmpty();
    }
  }

  /** True when a row of further motors says something. */
  public boolean furtherSaid() {
    return motors.stream().anyMatch(Further::said);
  }

  /** What is read and looked at in one place. */
  public record Group(String code, String title, List<Line> lines, List<Graded> findings) {}

  public boolean correction() {
    return !seen.isEmpty();
  }
}
