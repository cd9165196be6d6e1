package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Power for the same cooling against the condensing temperature: scoring/cycle-power.csv. Between
 * rows the logarithm of the power runs straight. A refrigerant that is not in it is taken to behave
 * like the one of scoring/cycle-power-like.csv.
 */
public final class CyclePower {

  private static final String FILE = "cycle-power.csv";
  private static final String LIKE_FILE = "cycle-power-like.csv";
  private static final String ANY = "*";

  private record Point(
      String refrigerant, String cycle, double condensingC, double kw, Source source) {}

  private record Line(double[] condensingC, double[] lnPower, Source source) {}

  private record Key(String refrigerant, String cycle) {}

  /**
   * What a warmer condenser costs.
   *
   * @param sharePerK more power for the same cooling, as a share of the power, for each kelvin
   * @param like refrigerant whose row was used
   */
  public record Penalty(double sharePerK, String like, Source source) {}

  private final Map<Key, Line> lines = new HashMap<>();
  private final Map<String, String> likes = new HashMap<>();

  private CyclePower() {}

  public static CyclePower load(RuleTables tables) {
    CyclePower power = new CyclePower();
    Map<Key, TreeMap<Double, Point>> points = new HashMap<>();
    for (Point point : tables.read(FILE, "row", CyclePower::point)) {
      points
          .computeIfAbsent(new Key(point.refrigerant, point.cycle), k -> new TreeMap<>())
          .put(point.condensingC, point);
    }
    points.forEach((key, line) -> power.add(tables, key, line));
    power.readLikes(tables);
    return power;
  }

  private static Point point(TableRow row) {
    Measure measure = Measure.of(row.required("measure"));
    double kw = row.number("kw_per_ton");
    if (!(kw > 0)) {
      throw new IllegalArgumentException("kw_per_ton must be above 0");
    }
    return new Point(
        row.required("refrigerant"),
        row.oneOf("cycle", Set.of("medium", "low")),
        measure.toBase(row.number("condensing")),
        kw,
        row.source());
  }

  private void add(RuleTables tables, Key key, TreeMap<Double, Point> points) {
    List<Point> rising = new ArrayList<>(points.values());
    for (int i = 1; i < rising.size(); i++) {
      if (rising.get(i).kw <= rising.get(i - 1).kw) {
        String message = key.refrigerant + " " + key.cycle + " must rise with the condensing";
        tables.problem(FILE, 0, "kw_per_ton", message + " temperature");
      }
    }
    if (rising.size() < 2) {
      tables.problem(FILE, 0, "condensing", key.refrigerant + " needs two rows or more");
      return;
    }
    double[] celsius = rising.stream().mapToDouble(Point::condensingC).toArray();
    double[] ln = rising.stream().mapToDouble(point -> Math.log(point.kw)).toArray();
    lines.put(key, new Line(celsius, ln, rising.get(0).source));
  }

  private void readLikes(RuleTables tables) {
    tables.read(
        LIKE_FILE,
        "refrigerant",
        row -> {
          String like = row.required("like");
          for (String cycle : List.of("medium", "low")) {
            if (!lines.containsKey(new Key(like, cycle))) {
              throw new IllegalArgumentException(like + " has no " + cycle + " rows in " + FILE);
            }
          }
          row.source();
          return likes.put(row.required("refrigerant"), like) == null;
        });
    if (!likes.containsKey(ANY)) {
      tables.problem(LIKE_FILE, 0, "refrigerant", "the row '*' is missing");
    }
  }

  /**
   * The mean over a rise of the condensing temperature.
   *
   * @param cycle medium or low temperature
   * @param condensingC where the rise begins; moved into the table where it lies outside
   * @param riseK above 0
   */
  public Penalty penalty(String refrigerant, String cycle, double condensingC, double riseK) {
    Line own = lines.get(new Key(refrigerant, cycle));
    String like = own != null ? refrigerant : likes.getOrDefault(refrigerant, likes.get(ANY));
    Line line = own != null ? own : lines.get(new Key(like, cycle));
    double last = line.condensingC[line.condensingC.length - 1];
    double from = Math.max(line.condensingC[0], Math.min(condensingC, last - riseK));
    double more = Math.exp(ln(line, from + riseK) - ln(line, from)) - 1;
    return new Penalty(more / riseK, like, line.source);
  }

  private static double ln(Line line, double condensingC) {
    int i = 1;
    while (i < line.condensingC.length - 1 && condensingC > line.condensingC[i]) {
      i++;
    }
    double span = line.condensingC[i] - line.condensingC[i - 1];
    double share = (condensingC - line.condensingC[i - 1]) / span;
    return line.lnPower[i - 1] + share * (line.lnPower[i] - line.lnPower[i - 1]);
  }
}
