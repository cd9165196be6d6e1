package coldround.pages.edge;

import coldround.fleet.UnitHistory;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import coldround.pages.Figures;
import coldround.pages.Plate;
import coldround.scoring.Scoring;
import coldround.upkeep.Backtest;
import coldround.upkeep.BacktestReport;
import coldround.upkeep.BacktestReport.Verdict;
import coldround.upkeep.Upkeep;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * How plans of an earlier day would have fared: the days that are asked for, as they are shown in
 * the form.
 *
 * @param first null where none is asked for, or where something is wrong
 */
record Comparison(String from, String until, LocalDate first, LocalDate last, Wrong wrong) {

  static Comparison read(String from, String until, LocalDate today) {
    List<FieldError> errors = new ArrayList<>();
    LocalDate last = day("until", until, today, errors);
    LocalDate first = day("from", from, null, errors);
    if (errors.isEmpty() && first != null && !last.isAfter(first)) {
      errors.add(new FieldError("until", until, "lies after the day to plan on"));
    }
    return new Comparison(
        said(from) ? from : last.minusYears(1).toString(),
        said(until) ? until : last.toString(),
        errors.isEmpty() ? first : null,
        last,
        new Wrong(errors));
  }

  private static boolean said(String text) {
    return text != null && !text.isEmpty();
  }

  private static LocalDate day(
      String name, String text, LocalDate unsaid, List<FieldError> errors) {
    try {
      return Parameters.date(name, text, unsaid);
    } catch (Problem problem) {
      errors.addAll(problem.errors());
      return unsaid;
    }
  }

  /** What it comes to; empty where none is asked for, or where something is wrong. */
  List<Plate.Field> figures(Scoring scoring, Upkeep upkeep, List<UnitHistory> histories) {
    if (first == null) {
      return List.of();
    }
    BacktestReport report = Backtest.run(scoring, upkeep, histories, first, last);
    var lead = report.medianLeadDays();
    return List.of(
        field("Units in use", report.units()),
        field("High-head lockouts on record", report.lockouts().size()),
        field("of which a cleaning was due before", report.foreseen()),
        new Plate.Field(
            "Median days from due to lockout",
            lead.isPresent() ? Figures.decimal(lead.getAsDouble(), 0) : "none"),
        field("Cleanings planned", report.cleanings().size()),
        field("needed, by what was found", report.count(Verdict.NEEDED)),
        field("needless, by what was found", report.count(Verdict.NEEDLESS)),
        field("nobody looked", report.count(Verdict.UNKNOWN)));
  }

  private static Plate.Field field(String name, long count) {
    return new Plate.Field(name, String.valueOf(count));
  }
}
