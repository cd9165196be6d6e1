package coldround.pages;

import java.util.List;

/**
 * Stepped curves in a field of a given size, ready to be put into a template.
 *
 * @param unit of the upright scale
 * @param told the picture in words
 */
public record CurvePicture(
    int width,
    int height,
    double left,
    double right,
    double top,
    double bottom,
    String unit,
    List<Mark> across,
    List<Mark> upright,
    List<Curve> curves,
    String told) {

  /** A mark of a scale. */
  public record Mark(double at, String label) {}

  /**
   * One curve with its name at its right end.
   *
   * @param dashes of its stroke, so that curves can be told apart without colour; empty for none
   * @param points for a polyline
   * @param steps places at which it changes, with what is told of them
   */
  public record Curve(String name, String dashes, String points, double nameY, List<Dot> steps) {}

  /** A step that says what happened. */
  public record Dot(double x, double y, String label) {}

  public CurvePicture {
    across = List.copyOf(across);
    upright = List.copyOf(upright);
    curves = List.copyOf(curves);
  }
}
