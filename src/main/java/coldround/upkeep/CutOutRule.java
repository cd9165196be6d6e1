package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.MonthMargin;
import coldround.scoring.TripState;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Pressure control check where the high-pressure cut-out is set above or below what the refrigerant
 * wants, or so low that even a clean coil trips it on a design day.
 */
final class CutOutRule implements UpkeepRule {

  private static final String OFF =
      "The high-pressure cut-out opens at {cutOut} condensing; for {refrigerant} it is set from"
          + " {least} to {most}";
  private static final String CLEAN =
      "With a clean coil the high-pressure cut-out opens at {tripAmbient} ambient, but the unit must"
          + " cope with {designAmbient}: no cleaning mends that";

  @Override
  public List<Ask> asks(UnitCase unit) {
    TripState trip = unit.assessment().trip();
    if (trip.cutOutC().isEmpty()) {
      return List.of();
    }
    double cutOutC = trip.cutOutC().getAsDouble();
    List<Ask> asks = new ArrayList<>();
    against(unit, cutOutC, asks);
    onADesignDay(unit, trip, cutOutC, asks);
    return asks;
  }

  private static void against(UnitCase unit, double cutOutC, List<Ask> asks) {
    String gas = unit.assessment().supply().refrigerant();
    CutOutLimits.CutOutLimit limit = unit.tables().cutOuts().of(gas);
    boolean above = cutOutC > limit.most().base();
    if (!above && cutOutC >= limit.least().base()) {
      return;
    }
    asks.add(
        Ask.by(
            TaskCode.PRESSURE,
            date(unit),
            UnitCase.reason(
                above ? "cut-out-too-high" : "cut-out-too-low",
                OFF,
                limit.source(),
                "cutOut",
                new Quantity(cutOutC, Measure.DEG_C),
                "refrigerant",
                gas,
                "least",
                limit.least(),
                "most",
                limit.most(),
                "date",
                date(unit))));
  }

  private static void onADesignDay(UnitCase unit, TripState trip, double cutOutC, List<Ask> asks) {
    double designC = Double.NEGATIVE_INFINITY;
    for (MonthMargin month : trip.months()) {
      designC = Math.max(designC, month.designAmbientC());
    }
    double tripC = cutOutC - unit.coil().clean().splitK();
    if (trip.designSource().isEmpty() || tripC >= designC) {
      return;
    }
    asks.add(
        Ask.by(
            TaskCode.PRESSURE,
            date(unit),
            UnitCase.reason(
                "cut-out-below-design-day",
                CLEAN,
                trip.designSource().get(),
                "tripAmbient",
                new Quantity(tripC, Measure.DEG_C),
                "designAmbient",
                new Quantity(designC, Measure.DEG_C),
                "cutOut",
                new Quantity(cutOutC, Measure.DEG_C),
                "cleanSplit",
                new Quantity(unit.coil().clean().splitK(), Measure.DELTA_K),
                "date",
                date(unit))));
  }

  /** A setting has no day of its own: some time after the control was last looked at. */
  private static LocalDate date(UnitCase unit) {
    LocalDate from = unit.countedFrom(TaskCode.PRESSURE);
    return from == null
        ? unit.soon()
        : unit.tables().limits().after(from, UpkeepLimit.CUT_OUT_OFF_AFTER);
  }
}
