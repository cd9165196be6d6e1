package coldround.pages;

import java.util.List;

/**
 * The condensing split over time as lines, dots and words with their places; nothing is left to
 * compute for who draws it.
 *
 * @param left left edge of the field that is drawn in; right, top and bottom likewise
 * @param unit unit of measure of the upright scale
 * @param days marks of the lying scale
 * @param splits marks of the upright scale
 * @param dots the readings
 * @param runs lines that join the readings between two cleanings, as points of a polyline
 * @param cleanings where the coil was cleaned
 * @param levels clean split and limit, those that are known
 * @param band how the split is expected to go on, low to high, as points of a polygon; empty if not
 *     known
 * @param course the expected split itself, as points of a polyline; empty if not known
 * @param today place of the day of the assessment
 * @param told the picture in a sentence or two, for those who do not see it
 */
public record SplitPicture(
    int width,
    int height,
    double left,
    double right,
    double top,
    double bottom,
    String unit,
    List<Mark> days,
    List<Mark> splits,
    List<Dot> dots,
    List<String> runs,
    List<Mark> cleanings,
    List<Level> levels,
    String band,
    String course,
    double today,
    String told) {

  /** One mark: its place along the scale and what is written there. */
  public record Mark(double at, String label) {}

  /**
   * One reading.
   *
   * @param used false when it is shown but not computed with
   * @param label day and split, and why it was left out
   */
  public record Dot(double x, double y, boolean used, String label) {}

  /**
   * A level line.
   *
   * @param name "clean" or "limit"
   * @param label what is written along it
   * @param labelY where that is written
   */
  public record Level(String name, double y, String label, double labelY) {}

  public SplitPicture {
    days = List.copyOf(days);
    splits = List.copyOf(splits);
    dots = List.copyOf(dots);
    runs = List.copyOf(runs);
    cleanings = List.copyOf(cleanings);
    levels = List.copyOf(levels);
  }
}
