package coldround.pages;

import coldround.scoring.Condition;
import coldround.scoring.FleetLine;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A score as one bar of 100 points: what is kept, then what each factor takes. Lengths and places
 * are in points, which are percent of the bar.
 *
 * @param score as a person reads it
 * @param range "36.2 to 47.0", empty when the evidence leaves nothing open
 * @param kept length of what is kept
 * @param parts what the factors take, from left to right, those that take nothing included
 * @param low worst case
 * @param high best case
 * @param thin names of the factors that rest on an expected value, empty when none does
 * @param told the whole bar in one sentence, for those who do not see it
 */
public record ScoreBar(
    String score,
    String range,
    double kept,
    List<Part> parts,
    double low,
    double high,
    String thin,
    String told) {

  /**
   * What one factor takes.
   *
   * @param code row of scoring/weights.csv
   * @param from where it begins
   * @param length points it takes
   * @param lost the same as a person reads it
   * @param known false when it rests on an expected value
   */
  public record Part(
      String code, String name, double from, double length, String lost, boolean known) {

    /** True when there is something to draw. */
    public boolean drawn() {
      return length > 0;
    }
  }

  public ScoreBar {
    parts = List.copyOf(parts);
  }

  /** True when the score could be another one with more evidence. */
  public boolean open() {
    return high - low >= 0.1;
  }

  /** How far apart worst and best case are. */
  public double span() {
    return tenth(high - low);
  }

  public static ScoreBar of(FleetLine line) {
    return of(line.score(), line.low(), line.high(), line.points());
  }

  public static ScoreBar of(Condition condition) {
    List<FleetLine.Points> points =
        condition.factors().stream()
            .map(f -> new FleetLine.Points(f.factor(), f.weight(), f.lost(), f.known()))
            .toList();
    return of(condition.score(), condition.low(), condition.high(), points);
  }

  private static ScoreBar of(double score, double low, double high, List<FleetLine.Points> points) {
    List<Part> parts = parts(score, points);
    String range = high - low >= 0.1 ? Figures.points(low) + " to " + Figures.points(high) : "";
    String thin =
        parts.stream().filter(p -> !p.known()).map(Part::name).collect(Collectors.joining(", "));
    String told = told(Figures.points(score), range, parts);
    return new ScoreBar(Figures.points(score), range, score, parts, low, high, thin, told);
  }

  private static List<Part> parts(double score, List<FleetLine.Points> points) {
    List<Part> parts = new ArrayList<>();
    double from = score;
    for (FleetLine.Points each : points) {
      double length = tenth(Math.min(each.lost(), 100 - from));
      String name = Words.of(each.factor());
      String lost = Figures.points(each.lost());
      parts.add(new Part(each.factor(), name, tenth(from), length, lost, each.known()));
      from += length;
    }
    return parts;
  }

  // sums of tenths carry the noise of binary fractions
  private static double tenth(double points) {
    return Math.round(points * 10) / 10.0;
  }

  private static String told(String score, String range, List<Part> parts) {
    String lost =
        parts.stream()
            .map(p -> p.lost() + " to " + p.name() + (p.known() ? "" : " (estimated)"))
            .collect(Collectors.joining(", "));
    String open = range.isEmpty() ? "" : " The evidence leaves " + range + " open.";
    return "Score " + score + " of 100. Points lost: " + lost + "." + open;
  }
}
