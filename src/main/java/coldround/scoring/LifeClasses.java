package coldround.scoring;

import coldround.reason.Source;
import coldround.scoring.statistics.WeibullLife;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Lives by equipment class: scoring/service-life.csv, where sources that disagree stay as rows. */
public final class LifeClasses {

  static final String FILE = "service-life.csv";

  /**
   * The life that is computed with.
   *
   * @param name of the class, as a person would say it
   * @param medianYears age by which half are gone
   * @param others what other rows of the class say, as text; empty when there are none
   */
  record LifeClass(
      String code,
      String name,
      WeibullLife life,
      double medianYears,
      String others,
      Source source) {}

  private record Row(
      String lifeClass,
      String name,
      boolean use,
      String statistic,
      double years,
      double shape,
      Source source) {}

  private final Map<String, LifeClass> byCode = new LinkedHashMap<>();

  private LifeClasses() {}

  public static LifeClasses load(RuleTables tables) {
    LifeClasses classes = new LifeClasses();
    Map<String, List<Row>> rows =
        tables.read(FILE, "row", LifeClasses::row).stream()
            .collect(
                Collectors.groupingBy(Row::lifeClass, LinkedHashMap::new, Collectors.toList()));
    rows.forEach((code, its) -> classes.add(tables, code, its));
    return classes;
  }

  private static Row row(TableRow row) {
    boolean use = row.text("use").equals("yes");
    return new Row(
        row.required("class"),
        row.required("name"),
        use,
        row.oneOf("statistic", Set.of("mean", "median")),
        row.number("years", 0.1, 200),
        use ? row.number("shape", 0.5, 20) : 0,
        row.source());
  }

  private void add(RuleTables tables, String code, List<Row> rows) {
    List<Row> used = rows.stream().filter(Row::use).toList();
    if (used.size() != 1) {
      String message = "class " + code + " needs one row to use, not " + used.size();
      tables.problem(FILE, 0, "use", message);
      return;
    }
    byCode.put(code, made(used.get(0), others(rows)));
  }

  private static LifeClass made(Row row, String others) {
    WeibullLife life =
        row.statistic.equals("mean")
            ? WeibullLife.ofMean(row.years, row.shape)
            : WeibullLife.ofMedian(row.years, row.shape);
    return new LifeClass(row.lifeClass, row.name, life, life.medianYears(), others, row.source);
  }

  private static String others(List<Row> rows) {
    return rows.stream()
        .filter(row -> !row.use)
        .map(row -> row.statistic + " " + row.years + " (" + row.source.citation() + ")")
        .collect(Collectors.joining("; "));
  }

  LifeClass of(String code) {
    return byCode.get(code);
  }

  boolean has(String code) {
    return byCode.containsKey(code);
  }
}
