package coldround.pages;

import coldround.pages.SplitSeries.Outlook;
import coldround.scoring.Assessment;
import coldround.scoring.CoilState;
import coldround.scoring.MonthMargin;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The ambient at which a unit locks out through the coming year, uncleaned, against the air it must
 * cope with.
 *
 * @param cutOutC condensing temperature at the cut-out
 * @param split how the split is expected to go on
 * @param months design ambient month by month, from that of the assessment on
 * @param limitK margin below which a cleaning is due
 * @param runsOut first day within a year on which the margin is below it
 */
public record TripSeries(
    LocalDate asOf,
    double cutOutC,
    Outlook split,
    List<MonthMargin> months,
    double limitK,
    Optional<LocalDate> runsOut) {

  public TripSeries {
    months = List.copyOf(months);
  }

  /** Empty where it cannot be known, as without the setting of the cut-out. */
  public static Optional<TripSeries> of(Assessment assessment) {
    TripState trip = assessment.trip();
    CoilState coil = assessment.coil();
    if (trip.months().isEmpty() || trip.cutOutC().isEmpty()) {
      return Optional.empty();
    }
    Outlook split =
        new Outlook(
            coil.splitK(),
            coil.splitLowK(),
            coil.splitHighK(),
            coil.foulingKPerDay(),
            coil.foulingSdKPerDay());
    return Optional.of(
        new TripSeries(
            assessment.asOf(),
            trip.cutOutC().getAsDouble(),
            split,
            trip.months(),
            trip.limitK(),
            trip.runsOut()));
  }

  double tripC(double days) {
    return cutOutC - split.after(days);
  }

  double lowC(double days) {
    return cutOutC - split.highAfter(days);
  }

  double highC(double days) {
    return cutOutC - split.lowAfter(days);
  }
}
