package coldround.upkeep;

import coldround.reason.Reason;
import coldround.scoring.Assessment;
import coldround.scoring.MonthMargin;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;

/** Pulls cleanings that fall due in the hot months into the weeks before them. */
public final class Season {

  static final String CODE = "before-hot-months";

  private static final String TEMPLATE =
      "Due on {due}, in the hot months from {season} on: better done in the weeks before";

  private final UpkeepTables tables;

  Season(UpkeepTables tables) {
    this.tables = tables;
  }

  /** The tasks of one unit, those of the season brought forward. */
  public List<Task> pulled(List<Task> tasks, Assessment assessment, LocalDate asOf) {
    return tasks.stream().map(task -> pulled(task, assessment, asOf)).toList();
  }

  private Task pulled(Task task, Assessment assessment, LocalDate asOf) {
    if (!tables.catalogue().get(task.task()).season() || task.due().isBefore(asOf)) {
      return task;
    }
    Optional<LocalDate> start = start(assessment.trip(), task.due());
    if (start.isEmpty()) {
      return task;
    }
    LocalDate before = start.get().minusDays(1);
    LocalDate lead =
        start.get().minusDays(Math.round(tables.limits().value(UpkeepLimit.SEASON_LEAD)));
    LocalDate done = new WorkRecord(assessment.history()).done(tables.catalogue().get(task.task()));
    boolean justDone = done != null && !done.isBefore(lead);
    if (justDone || before.isBefore(asOf)) {
      return task;
    }
    Reason why =
        UnitCase.reason(
            CODE,
            TEMPLATE,
            tables.limits().source(UpkeepLimit.SEASON_LEAD),
            "due",
            task.due(),
            "season",
            start.get(),
            "leadFrom",
            lead,
            "date",
            before);
    return task.broughtForward(before, new TaskReason(before, why), asOf);
  }

  /** First day of the run of hot months that the day lies in; empty when its month is not hot. */
  private Optional<LocalDate> start(TripState trip, LocalDate day) {
    double hottest = Double.NEGATIVE_INFINITY;
    double coolest = Double.POSITIVE_INFINITY;
    for (MonthMargin month : trip.months()) {
      hottest = Math.max(hottest, month.designAmbientC());
      coolest = Math.min(coolest, month.designAmbientC());
    }
    double hotFrom = hottest - tables.limits().value(UpkeepLimit.SEASON_BAND);
    YearMonth month = YearMonth.from(day);
    // a place that is as warm all year, such as a back room, has no season
    if (coolest >= hotFrom || !hot(trip, month, hotFrom)) {
      return Optional.empty();
    }
    while (hot(trip, month.minusMonths(1), hotFrom)) {
      month = month.minusMonths(1);
    }
    return Optional.of(month.atDay(1));
  }

  private static boolean hot(TripState trip, YearMonth month, double hotFrom) {
    for (MonthMargin known : trip.months()) {
      if (known.month().getMonth() == month.getMonth()) {
        return known.designAmbientC() >= hotFrom;
      }
    }
    return false;
  }
}
