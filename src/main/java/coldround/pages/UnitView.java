package coldround.pages;

import coldround.fleet.Fault;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.Visit;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Condition;
import coldround.scoring.Diagnostic;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The page of one unit, ready to be shown in the reader's measures.
 *
 * @param figures diagnostics that are known
 * @param missing diagnostics that are not, with what would have to be read or entered
 * @param next what to read or enter on the next visit, the best first
 * @param pictures the condensing split for a wide screen and for a phone; empty without readings
 * @param splits the same as a table
 * @param scores how the score went, for a wide screen and for a phone
 * @param visits newest first
 * @param faults newest first
 */
public record UnitView(
    String id,
    String tag,
    String kind,
    String customer,
    String site,
    String place,
    String asOf,
    String completeness,
    ScoreBar bar,
    Plate plate,
    List<FactorView> factors,
    List<Plate.Field> figures,
    List<Plate.Field> missing,
    List<Told> next,
    List<TaskView> tasks,
    List<SplitPicture> pictures,
    List<SplitLine> splits,
    String cleanBasis,
    List<CurvePicture> scores,
    List<VisitView> visits,
    List<FaultView> faults,
    List<String> cautions) {

  private static final int WIDE = 860;
  private static final int WIDE_HIGH = 320;
  private static final int PHONE = 340;
  private static final int SCORE_HIGH = 220;
  private static final int PHONE_HIGH = 280;

  /** One line of the table behind the picture. */
  public record SplitLine(String dateIso, String date, String split, String leftOut) {}

  public static UnitView of(UnitReport report, MeasureSystem system) {
    Unit unit = report.history().unit();
    Site site = report.history().site();
    Condition condition = report.condition();
    return new UnitView(
        unit.id(),
        unit.tag(),
        Words.title(unit.kind()),
        unit.customer(),
        unit.site(),
        site.name().isEmpty() ? site.code() : site.name(),
        Figures.day(condition.asOf()),
        Figures.percent(condition.completeness()),
        ScoreBar.of(condition),
        Plate.of(report.history(), system),
        condition.factors().stream().map(factor -> FactorView.of(factor, system)).toList(),
        figures(condition, system),
        missing(condition),
        report.next().stream().map(reading -> Told.of(reading.reason(), system)).toList(),
        tasks(report, condition.asOf(), system),
        pictures(report.splits(), system),
        splits(report.splits(), system),
        report.splits().cleanBasis(),
        scores(report),
        visits(report.history().visits(), system),
        faults(report.history().faults(), system),
        cautions(report));
  }

  private static List<Plate.Field> figures(Condition condition, MeasureSystem system) {
    return condition.diagnostics().stream()
        .filter(d -> d.value() != null)
        .map(d -> new Plate.Field(Words.title(d.name()), Figures.quantity(d.value(), system)))
        .toList();
  }

  private static List<Plate.Field> missing(Condition condition) {
    return condition.diagnostics().stream()
        .filter(d -> d.value() == null)
        .map((Diagnostic d) -> new Plate.Field(Words.title(d.name()), d.missing()))
        .toList();
  }

  private static List<TaskView> tasks(UnitReport report, LocalDate today, MeasureSystem system) {
    return report.tasks().stream().map(task -> TaskView.of(task, today, system)).toList();
  }

  private static List<SplitPicture> pictures(SplitSeries splits, MeasureSystem system) {
    return splits.any()
        ? List.of(
            SplitDrawing.draw(splits, system, WIDE, WIDE_HIGH),
            SplitDrawing.draw(splits, system, PHONE, PHONE_HIGH))
        : List.of();
  }

  private static List<CurvePicture> scores(UnitReport report) {
    LocalDate until = report.condition().asOf();
    return report.scores().isEmpty()
        ? List.of()
        : List.of(
            ScoreCurve.draw(report.scores(), until, WIDE, SCORE_HIGH),
            ScoreCurve.draw(report.scores(), until, PHONE, SCORE_HIGH));
  }

  private static List<SplitLine> splits(SplitSeries splits, MeasureSystem system) {
    return newestFirst(splits.readings()).stream()
        .map(
            p ->
                new SplitLine(
                    p.date().toString(),
                    Figures.day(p.date()),
                    Figures.split(p.splitK(), system),
                    p.leftOut().map(why -> why.text(system)).orElse("")))
        .toList();
  }

  private static List<VisitView> visits(List<Visit> visits, MeasureSystem system) {
    return newestFirst(visits).stream().map(visit -> VisitView.of(visit, system)).toList();
  }

  private static List<FaultView> faults(List<Fault> faults, MeasureSystem system) {
    return newestFirst(faults).stream().map(fault -> FaultView.of(fault, system)).toList();
  }

  private static <T> List<T> newestFirst(List<T> oldestFirst) {
    List<T> reversed = new ArrayList<>(oldestFirst);
    Collections.reverse(reversed);
    return reversed;
  }

  private static List<String> cautions(UnitReport report) {
    Set<String> cautions = new LinkedHashSet<>(report.condition().cautions());
    report.tasks().forEach(task -> cautions.addAll(task.cautions()));
    return List.copyOf(cautions);
  }
}
