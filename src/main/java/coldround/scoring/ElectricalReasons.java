package coldround.scoring;

import coldround.reason.Reason;
import coldround.scoring.FanMotor.Verdict;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts electrical readings outside their limits into words, with what to do about them. */
final class ElectricalReasons {

  private static final String STOP =
      "Voltage imbalance {imbalance} on {date}, over {limit}: a motor must not run on it. Find out"
          + " whether supply, fuse or contactor is to blame before it is started again";
  private static final String DERATE =
      "Voltage imbalance {imbalance} on {date}: above {limit} motors run hot. Compare the line"
          + " voltages before and behind the contactor";
  private static final String SUPPLY =
      "{volts} on {date} is {off} off the nameplate's {rated}; {limit} is allowed";
  private static final String WEAK =
      "{fan}: {amps} of {rated} on {date} is {load} of its nameplate, below {limit}: a motor or"
          + " capacitor about to fail, a loose blade or blocked air. Plan to replace the motor unless"
          + " something else is found";
  private static final String STRONG =
      "{fan}: {amps} of {rated} on {date} is {load} of its nameplate, above {limit}: worn bearing,"
          + " wrong blade or low voltage";
  private static final String COMPRESSOR =
      "Compressor: {amps} on {date}, {change} against its usual {usual} at like pressures; above"
          + " {limit} look for worn valves, low charge or a failing winding";
  private static final String WORN =
      "{part} found {grade} on {date}: it may drop a phase or overheat";

  private final Limits limits;
  private final PartGrades parts;

  ElectricalReasons(ScoringRules rules) {
    this.limits = rules.limits();
    this.parts = rules.parts();
  }

  Optional<Reason> imbalance(double percent, LocalDate date) {
    if (limits.over(LimitName.IMBALANCE_MOST, percent)) {
      return Optional.of(
          imbalance("voltage-imbalance-stop", STOP, percent, date, LimitName.IMBALANCE_MOST));
    }
    return limits.over(LimitName.IMBALANCE_DERATE, percent)
        ? Optional.of(
            imbalance("voltage-imbalance", DERATE, percent, date, LimitName.IMBALANCE_DERATE))
        : Optional.empty();
  }

  private Reason imbalance(
      String code, String template, double percent, LocalDate date, LimitName limit) {
    return new Reason(
        code,
        template,
        Facts.of("imbalance", Facts.percent(percent), "date", date, "limit", limits.shown(limit)),
        limits.source(limit));
  }

  Optional<Reason> supply(double volts, double rated, LocalDate date) {
    double off = rated > 0 ? 100 * (volts / rated - 1) : 0;
    if (!limits.over(LimitName.SUPPLY_BAND, Math.abs(off))) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "supply-voltage",
            SUPPLY,
            Facts.of(
                "volts",
                Facts.volts(volts),
                "date",
                date,
                "off",
                Facts.percent(off),
                "rated",
                Facts.volts(rated),
                "limit",
                limits.shown(LimitName.SUPPLY_BAND)),
            limits.source(LimitName.SUPPLY_BAND)));
  }

  /** For a motor that wants a look. */
  Reason fan(FanMotor fan) {
    boolean weak = fan.verdict() == Verdict.UNDERLOADED;
    LimitName limit = weak ? LimitName.FAN_LOAD_LEAST : LimitName.FAN_LOAD_MOST;
    return new Reason(
        weak ? "fan-motor-weak" : "fan-motor-overloaded",
        weak ? WEAK : STRONG,
        Facts.of(
            "fan",
            name(fan),
            "amps",
            Facts.amps(fan.measuredA()),
            "rated",
            Facts.amps(fan.ratedA().orElseThrow()),
            "date",
            fan.date(),
            "load",
            Facts.percent(fan.loadPercent().orElseThrow()),
            "limit",
            limits.shown(limit)),
        limits.source(limit));
  }

  private static String name(FanMotor fan) {
    String name = fan.quantity().equals("condenser_fan") ? "Condenser fan" : "Evaporator fan";
    return fan.part().isEmpty() ? name : name + " (" + fan.part() + ")";
  }

  Optional<Reason> compressor(OptionalDouble amps, OptionalDouble usual, Optional<LocalDate> date) {
    if (amps.isEmpty() || usual.isEmpty() || usual.getAsDouble() <= 0) {
      return Optional.empty();
    }
    double change = 100 * (amps.getAsDouble() / usual.getAsDouble() - 1);
    if (!limits.over(LimitName.COMPRESSOR_CHANGE, Math.abs(change))) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "compressor-amps-changed",
            COMPRESSOR,
            Facts.of(
                "amps",
                Facts.amps(amps.getAsDouble()),
                "date",
                date.orElseThrow(),
                "change",
                Facts.percent(change),
                "usual",
                Facts.amps(usual.getAsDouble()),
                "limit",
                limits.shown(LimitName.COMPRESSOR_CHANGE)),
            limits.source(LimitName.COMPRESSOR_CHANGE)));
  }

  /** For a part whose grade asks for a look. */
  Optional<Reason> part(String part, Optional<String> grade, Optional<LocalDate> date) {
    return grade
        .flatMap(parts::asksForLook)
        .map(
            source ->
                new Reason(
                    part + "-" + grade.get(),
                    WORN,
                    Facts.of(
                        "part",
                        part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1),
                        "grade",
                        grade.get(),
                        "date",
                        date.orElseThrow()),
                    source));
  }
}
