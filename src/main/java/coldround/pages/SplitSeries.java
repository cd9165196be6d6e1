package coldround.pages;

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

  /**
   * One reading of the split.
   *
   * @param leftOut why it is shown but not computed with; empty when it is used
   */
  public record Point(LocalDate date, double splitK, String leftOut) {
    public boolean used() {
      return leftOut.isEmpty();
    }
  }

  /**
   * The expected split from the day of the assessment on.
   *
   * @param splitK on that day
   * @param lowK low end of the band on that day
   * @param highK high end of the band on that day
   * @param growthKPerDay expected growth
   */
  public record Outlook(double splitK, double lowK, double highK, double growthKPerDay) {}

  public SplitSeries {
    readings = List.copyOf(readings);
    cleanings = List.copyOf(cleanings);
  }

  /** True when there is a reading to draw. */
  public boolean any() {
    return !readings.isEmpty();
  }
}
