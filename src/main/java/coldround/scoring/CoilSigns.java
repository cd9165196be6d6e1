package coldround.scoring;

import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.Cleanings.Cycle;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Signs that a high split is not, or not only, a dirty coil. */
final class CoilSigns {

  private static final String STILL_HIGH =
      "Still {split} on {date}, {after} after a cleaning, where {clean} is to be expected. Before it"
          + " is cleaned again look for a weak fan, hot air drawn in again, overcharge or air in the"
          + " circuit, and dirt deep between the fins";
  private static final String FAN =
      "The split is high and {fan} draws {load} of its nameplate: look at the fan before blaming"
          + " dirt";
  private static final String PART =
      "The split is high and the contactor was found {grade} on {date}: a fan or compressor on a bad"
          + " contact runs short of power";
  private static final String IMBALANCE =
      "The split is high with a voltage imbalance of {imbalance} on {date}: fan motors may run slow";
  private static final String SUBCOOLED =
      "High split with {subcooling} subcooling on {date}: look for overcharge or air in the circuit";

  private final Limits limits;
  private final PartGrades parts;
  private final CleanSplits cleanSplits;

  CoilSigns(ScoringRules rules, CleanSplits cleanSplits) {
    this.limits = rules.limits();
    this.parts = rules.parts();
    this.cleanSplits = cleanSplits;
  }

  List<Reason> of(
      Evidence evidence,
      Cycle current,
      CleanSplit given,
      CleanSplit clean,
      double excessK,
      ElectricalState electrical,
      EvaporatorState evaporator) {
    List<Reason> signs = new ArrayList<>();
    stillHigh(current, given, clean, signs);
    boolean high =
        !current.used().isEmpty()
            && (limits.over(LimitName.EXCESS_WATCH, excessK) || !signs.isEmpty());
    if (high) {
      fans(electrical, signs);
      contactor(electrical, signs);
      imbalance(electrical, signs);
      subcooled(evaporator, signs);
    }
    return signs;
  }

  private void stillHigh(Cycle current, CleanSplit given, CleanSplit clean, List<Reason> signs) {
    SplitReading lowest = cleanSplits.lowest(current);
    if (lowest == null) {
      return;
    }
    double splitK = CleanSplits.splitK(lowest);
    boolean overOwn = limits.over(LimitName.EXCESS_WATCH, splitK - clean.splitK());
    boolean overGiven = splitK > cleanSplits.mostK(given);
    if (!overOwn && !overGiven) {
      return;
    }
    long after = ChronoUnit.DAYS.between(current.cleaned(), lowest.date());
    LimitName limit = overOwn ? LimitName.EXCESS_WATCH : CleanSplits.overGiven(given);
    signs.add(
        new Reason(
            "still-high-after-cleaning",
            STILL_HIGH,
            Facts.of(
                "split",
                Facts.kelvin(splitK),
                "date",
                lowest.date(),
                "after",
                Facts.days(after),
                "clean",
                Facts.kelvin(overOwn ? clean.splitK() : given.splitK())),
            limits.source(limit)));
  }

  private void fans(ElectricalState electrical, List<Reason> signs) {
    for (FanMotor fan : electrical.fans()) {
      if (fan.quantity().equals("condenser_fan") && fan.wantsLook()) {
        boolean weak = fan.verdict() == FanMotor.Verdict.UNDERLOADED;
        Source source = limits.source(weak ? LimitName.FAN_LOAD_LEAST : LimitName.FAN_LOAD_MOST);
        signs.add(
            new Reason(
                "check-condenser-fan",
                FAN,
                Facts.of(
                    "fan",
                    fan.part().isEmpty() ? "the condenser fan" : fan.part(),
                    "load",
                    Facts.percent(fan.loadPercent().orElseThrow())),
                source));
      }
    }
  }

  private void contactor(ElectricalState electrical, List<Reason> signs) {
    electrical
        .contactor()
        .flatMap(parts::asksForLook)
        .ifPresent(
            source ->
                signs.add(
                    new Reason(
                        "check-contactor",
                        PART,
                        Facts.of(
                            "grade",
                            electrical.contactor().orElseThrow(),
                            "date",
                            electrical.contactorDate().orElseThrow()),
                        source)));
  }

  private void imbalance(ElectricalState electrical, List<Reason> signs) {
    double percent = electrical.imbalancePercent().orElse(0);
    if (limits.over(LimitName.IMBALANCE_DERATE, percent)) {
      signs.add(
          new Reason(
              "check-voltage",
              IMBALANCE,
              Facts.of(
                  "imbalance",
                  Facts.percent(percent),
                  "date",
                  electrical.voltageDate().orElseThrow()),
              limits.source(LimitName.IMBALANCE_DERATE)));
    }
  }

  private void subcooled(EvaporatorState evaporator, List<Reason> signs) {
    double subcooling = evaporator.subcoolingK().orElse(0);
    if (limits.over(LimitName.SUBCOOLING_HIGH, subcooling)) {
      signs.add(
          new Reason(
              "check-charge",
              SUBCOOLED,
              Facts.of(
                  "subcooling", Facts.kelvin(subcooling), "date", evaporator.date().orElseThrow()),
              limits.source(LimitName.SUBCOOLING_HIGH)));
    }
  }
}
