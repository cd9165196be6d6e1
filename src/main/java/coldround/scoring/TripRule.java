package coldround.scoring;

import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.scoring.DesignAmbients.Place;
import coldround.scoring.Gas.Side;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ambient at which a unit locks out, now and through the coming year, if it is not cleaned. */
final class TripRule {

  private static final int MONTHS = 12;

  private final Limits limits;
  private final DesignAmbients ambients;
  private final Splits splits;

  TripRule(ScoringRules rules, Splits splits) {
    this.limits = rules.limits();
    this.ambients = rules.ambients();
    this.splits = splits;
  }

  TripState state(Evidence evidence, CoilState coil) {
    Place place = place(evidence);
    double designC = DesignAmbients.monthC(place, evidence.site(), evidence.asOf().getMonth());
    Optional<Quantity> cutOut = evidence.unit().plate("high_cutout");
    double cutOutC =
        cutOut
            .map(
                p ->
                    evidence
                        .gas()
                        .temperatureC(Side.MIDPOINT, p.pressureKpa(evidence.atmosphereKpa())))
            .orElse(Double.NaN);
    if (Double.isNaN(cutOutC)) {
      return unknown(place, designC, missing(evidence, cutOut));
    }
    double tripC = cutOutC - coil.splitK();
    return new TripState(
        OptionalDouble.of(cutOutC),
        OptionalDouble.of(tripC),
        OptionalDouble.of(cutOutC - coil.splitHighK()),
        OptionalDouble.of(cutOutC - coil.splitLowK()),
        OptionalDouble.of(designC),
        Optional.of(place.source()),
        OptionalDouble.of(tripC - designC),
        months(evidence, place, cutOutC, coil),
        limits.value(LimitName.TRIP_MARGIN_LEAST),
        runsOut(evidence, place, tripC, coil.foulingKPerDay()),
        Optional.empty());
  }

  private TripState unknown(Place place, double designC, Reason missing) {
    return new TripState(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(designC),
        Optional.of(place.source()),
        OptionalDouble.empty(),
        List.of(),
        limits.value(LimitName.TRIP_MARGIN_LEAST),
        Optional.empty(),
        Optional.of(missing));
  }

  /** Where the condenser stands: the equipment list, else what is usual for the kind. */
  private Place place(Evidence evidence) {
    Place own = ambients.of(evidence.unit().condenserPlace());
    return own != null ? own : ambients.of(evidence.kind().condenserPlace());
  }

  private Reason missing(Evidence evidence, Optional<Quantity> cutOut) {
    if (cutOut.isEmpty()) {
      return new Reason(
          "cut-out-unknown",
          "The setting of the high-pressure cut-out is not on record: read it and enter it",
          Facts.of(),
          limits.source(LimitName.TRIP_MARGIN_LEAST));
    }
    if (evidence.gas().curve() == null) {
      return splits.noCurve(evidence);
    }
    String why = evidence.gas().whyOutside(cutOut.get().pressureKpa(evidence.atmosphereKpa()));
    return new Reason(
        "cut-out-outside-table",
        "The cut-out setting has no condensing temperature. {why}",
        Facts.of("why", why),
        limits.source(LimitName.TRIP_MARGIN_LEAST));
  }

  private static List<MonthMargin> months(
      Evidence evidence, Place place, double cutOutC, CoilState coil) {
    List<MonthMargin> months = new ArrayList<>(MONTHS + 1);
    YearMonth first = YearMonth.from(evidence.asOf());
    for (int i = 0; i <= MONTHS; i++) {
      YearMonth month = first.plusMonths(i);
      double days = ChronoUnit.DAYS.between(evidence.asOf(), month.atEndOfMonth());
      double designC = DesignAmbients.monthC(place, evidence.site(), month.getMonth());
      months.add(new MonthMargin(month, designC, cutOutC - coil.splitKAfter(days)));
    }
    return List.copyOf(months);
  }

  /** The trip ambient falls in a straight line, the design ambient in steps of months. */
  private Optional<LocalDate> runsOut(
      Evidence evidence, Place place, double tripC, double kPerDay) {
    LocalDate asOf = evidence.asOf();
    double limitK = limits.value(LimitName.TRIP_MARGIN_LEAST);
    YearMonth first = YearMonth.from(asOf);
    for (int i = 0; i <= MONTHS; i++) {
      YearMonth month = first.plusMonths(i);
      double designC = DesignAmbients.monthC(place, evidence.site(), month.getMonth());
      double spare = tripC - designC - limitK;
      long from = i == 0 ? 0 : ChronoUnit.DAYS.between(asOf, month.atDay(1));
      long to = Math.min(365, ChronoUnit.DAYS.between(asOf, month.atEndOfMonth()));
      long day =
          spare < 0 ? from : kPerDay > 0 ? Math.max(from, firstBelow(spare, kPerDay)) : to + 1;
      if (day <= to) {
        return Optional.of(asOf.plusDays(day));
      }
    }
    return Optional.empty();
  }

  /** First whole day on which spare − kPerDay × days is below 0. */
  private static long firstBelow(double spare, double kPerDay) {
    double days = Math.min(100_000, Math.floor(spare / kPerDay));
    return (long) days + 1;
  }
}
