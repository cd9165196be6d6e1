package coldround.pages;

import java.util.List;

/**
 * The faults of a unit on a line of time, one lane a failure mode.
 *
 * @param lanes the mode with most faults first
 * @param told the picture in words
 */
public record FaultPicture(
    int width,
    int height,
    double left,
    double right,
    double bottom,
    List<SplitPicture.Mark> days,
    List<Lane> lanes,
    String told) {

  /**
   * One failure mode.
   *
   * @param y where its line lies
   * @param links bows from a fault to the one that repeats it
   */
  public record Lane(String name, double y, List<Event> events, List<Link> links) {
    public Lane {
      events = List.copyOf(events);
      links = List.copyOf(links);
    }
  }

  /** One fault. */
  public record Event(double x, boolean repeat, String label) {}

  /**
   * A bow.
   *
   * @param path for the attribute d of a path
   * @param held false when the repair in between did not hold
   */
  public record Link(String path, boolean held, String label) {}

  public FaultPicture {
    days = List.copyOf(days);
    lanes = List.copyOf(lanes);
  }
}
