package coldround.pages;

import coldround.fleet.Visit;
import coldround.reason.Reason;
import coldround.scoring.Assessment;
import coldround.scoring.CleanSplit;
import coldround.scoring.CoilState;
import coldround.scoring.SplitReading;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a unit's condensing split over time, to be drawn.
 *
 * @param readings oldest first
 * @param cleanSplitK split with a clean coil
 * @param cleanBasis where that figure comes from, in words
 * @param limitK split at which a cleaning is due
 * @param cleanings days on which the condenser coil was cleaned, oldest first
 * @param asOf day of the assessment
 * @param outlook how the split is expected to go on, uncleaned
 */
public record SplitSeries(
    List<Point> readings,
    OptionalDouble cleanSplitK,
    String cleanBasis,
    OptionalDouble limitK,
    List<LocalDate> cleanings,
    LocalDate asOf,
    Optional<Outlook> outlook) {

  private static final String CLEANED = "condenser-coil-cleaned";

  /**
   * One reading of the split.
   *
   * @param asFound true when it is from before the cleaning of the same day
   * @param leftOut why it is shown but not computed with; empty when it is used
   */
  public record Point(LocalDate date, double splitK, boolean asFound, Optional<Reason> leftOut) {
    public boolean used() {
      return leftOut.isEmpty();
    }
  }

  /**
   * The expected split from the day of the assessment on.
   *
   * @param splitK on that day
   * @param lowK low end of the 80 % band on that day
   * @param highK high end of it
   * @param growthKPerDay expected growth
   * @param growthSdKPerDay standard deviation of that growth
   */
  public record Outlook(
      double splitK, double lowK, double highK, double growthKPerDay, double growthSdKPerDay) {

    // an 80 % band ends at the 0.1 and 0.9 quantiles of the standard normal distribution
    private static final double QUANTILE = 1.2816;

    public double after(double days) {
      return splitK + growthKPerDay * days;
    }

    public double lowAfter(double days) {
      return after(days) - Math.hypot(splitK - lowK, QUANTILE * growthSdKPerDay * days);
    }

    public double highAfter(double days) {
      return after(days) + Math.hypot(highK - splitK, QUANTILE * growthSdKPerDay * days);
    }
  }

  public SplitSeries {
    readings = List.copyOf(readings);
    cleanings = List.copyOf(cleanings);
  }

  /**
   * @param excessLimitK excess at which a cleaning is due
   */
  public static SplitSeries of(Assessment assessment, double excessLimitK) {
    CoilState coil = assessment.coil();
    return new SplitSeries(
        coil.readings().stream()
            .filter(reading -> reading.splitK().isPresent())
            .map(SplitSeries::point)
            .toList(),
        OptionalDouble.of(coil.clean().splitK()),
        basis(coil.clean()),
        OptionalDouble.of(coil.clean().splitK() + excessLimitK),
        assessment.history().visits().stream()
            .filter(visit -> visit.did(CLEANED))
            .map(Visit::date)
            .distinct()
            .toList(),
        assessment.asOf(),
        Optional.of(
            new Outlook(
                coil.splitK(),
                coil.splitLowK(),
                coil.splitHighK(),
                coil.foulingKPerDay(),
                coil.foulingSdKPerDay())));
  }

  private static Point point(SplitReading reading) {
    return new Point(
        reading.date(), reading.splitK().getAsDouble(), reading.asFound(), reading.leftOut());
  }

  private static String basis(CleanSplit clean) {
    String day = clean.date().map(date -> " on " + Figures.day(date)).orElse("");
    String words =
        switch (clean.basis()) {
          case MEASURED -> "lowest reading soon after a cleaning," + day;
          case MEASURED_HELD_DOWN ->
              "reading after a cleaning" + day + ", held down to what design or kind allow";
          case DESIGN -> "design split of the equipment list";
          case KIND -> "usual split of this kind of unit";
        };
    return words + " (" + clean.source() + ")";
  }

  /** True when there is a reading to draw. */
  public boolean any() {
    return !readings.isEmpty();
  }
}
