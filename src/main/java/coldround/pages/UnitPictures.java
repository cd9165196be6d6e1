package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What is drawn of a unit besides its split, each for a wide screen and for a phone.
 *
 * @param trip empty where the trip ambient is not known
 * @param tripMissing what would have to be known
 * @param faults empty without a fault
 * @param crosses when the split is expected to cross its limit, in words
 */
public record UnitPictures(
    List<TripPicture> trip, String tripMissing, List<FaultPicture> faults, String crosses) {

  private static final int WIDE = 860;
  private static final int WIDE_HIGH = 300;
  private static final int PHONE = 340;
  private static final int PHONE_HIGH = 280;
  // beyond that nobody plans, and the straight line is not believed
  private static final int YEARS_AHEAD = 3;

  public UnitPictures {
    trip = List.copyOf(trip);
    faults = List.copyOf(faults);
  }

  public static UnitPictures of(Assessment assessment, double excessLimitK, MeasureSystem system) {
    Optional<TripSeries> trip = TripSeries.of(assessment);
    return new UnitPictures(
        trip.map(
                t ->
                    List.of(
                        TripDrawing.draw(t, system, WIDE, WIDE_HIGH),
                        TripDrawing.draw(t, system, PHONE, PHONE_HIGH)))
            .orElse(List.of()),
        assessment.trip().missing().map(why -> Told.of(why, system).text()).orElse(""),
        faults(assessment),
        crosses(SplitSeries.of(assessment, excessLimitK)));
  }

  private static List<FaultPicture> faults(Assessment assessment) {
    return IntStream.of(WIDE, PHONE)
        .boxed()
        .flatMap(
            width ->
                FaultDrawing.draw(assessment.faults().events(), assessment.asOf(), width).stream())
        .toList();
  }

  /** When the split crosses its limit, uncleaned, with the ends of its band. */
  static String crosses(SplitSeries series) {
    if (series.outlook().isEmpty() || series.limitK().isEmpty()) {
      return "";
    }
    SplitSeries.Outlook outlook = series.outlook().orElseThrow();
    double limitK = series.limitK().getAsDouble();
    Optional<LocalDate> expected = first(series.asOf(), outlook::after, limitK);
    Optional<LocalDate> early = first(series.asOf(), outlook::highAfter, limitK);
    Optional<LocalDate> late = first(series.asOf(), outlook::lowAfter, limitK);
    if (early.isEmpty()) {
      return "Uncleaned, the split stays under its limit for " + YEARS_AHEAD + " years.";
    }
    if (late.isPresent() && late.get().equals(series.asOf())) {
      return "The split is over its limit already.";
    }
    String begins =
        expected
            .map(
                day ->
                    day.equals(series.asOf())
                        ? "The split is at its limit now"
                        : "Uncleaned, the split is expected to cross its limit on "
                            + Figures.day(day))
            .orElse("Uncleaned, the split may cross its limit");
    return begins
        + "; 80 % band: from "
        + (early.get().equals(series.asOf()) ? "now" : Figures.day(early.get()))
        + late.map(day -> " to " + Figures.day(day)).orElse(" on, without an end in sight")
        + ".";
  }

  private static Optional<LocalDate> first(
      LocalDate today, ToDoubleFunction<Double> splitK, double limitK) {
    return IntStream.rangeClosed(0, YEARS_AHEAD * 365)
        .filter(day -> splitK.applyAsDouble((double) day) >= limitK)
        .mapToObj(today::plusDays)
        .findFirst();
  }
}
