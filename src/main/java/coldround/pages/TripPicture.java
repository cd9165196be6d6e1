package coldround.pages;

import java.util.List;

/**
 * Trip ambient against design ambient through the coming year, as lines and words with their
 * places.
 *
 * @param design steps of the design ambient, as points of a polyline
 * @param least the same with the least margin on top: below it the unit is to be cleaned
 * @param trip expected trip ambient, as points of a polyline
 * @param band the same with its 80 % band, as points of a polygon
 * @param crossing where the margin runs out; label empty when it does not within the year
 * @param told the picture in words
 */
public record TripPicture(
    int width,
    int height,
    double left,
    double right,
    double top,
    double bottom,
    String unit,
    List<SplitPicture.Mark> days,
    List<SplitPicture.Mark> ambients,
    String design,
    String least,
    String trip,
    String band,
    SplitPicture.Mark crossing,
    boolean crossingAtRight,
    String told) {
  public TripPicture {
    days = List.copyOf(days);
    ambients = List.copyOf(ambients);
  }
}
