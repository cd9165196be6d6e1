package coldround.scoring;

import coldround.fleet.Reading;
import coldround.fleet.Unit;
import coldround.fleet.Visit;
import coldround.reason.Reason;
import coldround.scoring.FanMotor.Verdict;
import coldround.scoring.statistics.TheilSen;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Voltage, fan motors, compressor, contactor and wiring of a unit: the latest that still holds. */
final class Electrics {

  private static final List<String> FANS = List.of("condenser_fan", "evaporator_fan");

  private final Limits limits;
  private final ElectricalReasons words;
  private final ReadingHabits habits;

  Electrics(ScoringRules rules) {
    this.limits = rules.limits();
    this.words = new ElectricalReasons(rules);
    this.habits = rules.habits();
  }

  ElectricalState state(Evidence evidence) {
    VisitFigures volts = latestVoltages(evidence);
    OptionalDouble imbalance = volts == null ? OptionalDouble.empty() : imbalance(volts);
    OptionalDouble mean = volts == null ? OptionalDouble.empty() : mean(volts);
    List<FanMotor> fans = fans(evidence);
    Compressor compressor = compressor(evidence);
    int contactor = latestGrade(evidence, "contactor", "contactor-replaced");
    int wiring = latestGrade(evidence, "wiring", "wiring-repaired");
    Optional<String> contactorGrade = grade(evidence, contactor, "contactor");
    Optional<String> wiringGrade = grade(evidence, wiring, "wiring");
    List<Reason> findings = new ArrayList<>();
    if (volts != null) {
      findings.addAll(voltageFindings(evidence.unit(), volts.visit.date(), imbalance, mean));
    }
    fans.stream().filter(FanMotor::wantsLook).map(words::fan).forEach(findings::add);
    words.compressor(compressor.amps, compressor.usual, compressor.date).ifPresent(findings::add);
    words.part("contactor", contactorGrade, date(evidence, contactor)).ifPresent(findings::add);
    words.part("wiring", wiringGrade, date(evidence, wiring)).ifPresent(findings::add);
    return new ElectricalState(
        Optional.ofNullable(volts).map(v -> v.visit.date()),
        imbalance,
        mean,
        fans,
        compressor.amps,
        compressor.date,
        compressor.usual,
        compressor.changePercent(),
        contactorGrade,
        date(evidence, contactor),
        wiringGrade,
        date(evidence, wiring),
        findings);
  }

  /** The latest visit with all three line voltages; else the latest with the first alone. */
  private static VisitFigures latestVoltages(Evidence evidence) {
    VisitFigures single = null;
    for (int i = evidence.figures().size() - 1; i >= 0; i--) {
      VisitFigures figures = evidence.figures().get(i);
      if (imbalance(figures).isPresent()) {
        return figures;
      }
      if (single == null && !Double.isNaN(figures.l1l2V)) {
        single = figures;
      }
    }
    return single;
  }

  private static OptionalDouble imbalance(VisitFigures volts) {
    double mean = (volts.l1l2V + volts.l2l3V + volts.l1l3V) / 3;
    return mean > 0
        ? OptionalDouble.of(imbalancePercent(volts.l1l2V, volts.l2l3V, volts.l1l3V))
        : OptionalDouble.empty();
  }

  /** Largest deviation from the mean in percent of the mean (NEMA MG 1). */
  static double imbalancePercent(double a, double b, double c) {
    double mean = (a + b + c) / 3;
    double worst = Math.max(Math.abs(a - mean), Math.max(Math.abs(b - mean), Math.abs(c - mean)));
    return 100 * worst / mean;
  }

  private static OptionalDouble mean(VisitFigures volts) {
    double three = (volts.l1l2V + volts.l2l3V + volts.l1l3V) / 3;
    return OptionalDouble.of(Double.isNaN(three) ? volts.l1l2V : three);
  }

  private List<Reason> voltageFindings(
      Unit unit, LocalDate date, OptionalDouble imbalance, OptionalDouble mean) {
    List<Reason> findings = new ArrayList<>();
    imbalance.ifPresent(percent -> words.imbalance(percent, date).ifPresent(findings::add));
    OptionalDouble supply = unit.plateBase("supply");
    if (supply.isPresent() && mean.isPresent()) {
      words.supply(mean.getAsDouble(), supply.getAsDouble(), date).ifPresent(findings::add);
    }
    return findings;
  }

  private List<FanMotor> fans(Evidence evidence) {
    List<FanMotor> fans = new ArrayList<>();
    for (String quantity : FANS) {
      fans(evidence, quantity, fans);
    }
    return fans;
  }

  /** Latest current of each part since the motors were replaced. */
  private void fans(Evidence evidence, String quantity, List<FanMotor> fans) {
    OptionalDouble rated = evidence.unit().plateBase(quantity + "_rated");
    String replaced = quantity.replace('_', '-') + "-replaced";
    Set<String> seen = new HashSet<>();
    int from = fans.size();
    boolean over = false;
    for (int i = evidence.figures().size() - 1; i >= 0 && !over; i--) {
      Visit visit = evidence.visit(i);
      boolean mended = visit.did(replaced);
      if (!mended || !habits.asFound(visit.purpose())) {
        for (Reading reading : visit.readings()) {
          if (reading.quantity().equals(quantity) && reading.usable() && seen.add(reading.part())) {
            fans.add(motor(reading, visit.date(), rated));
          }
        }
      }
      over = mended;
    }
    fans.subList(from, fans.size()).sort(Comparator.comparing(FanMotor::part));
  }

  private FanMotor motor(Reading reading, LocalDate date, OptionalDouble rated) {
    double amps = reading.value().base();
    if (rated.isEmpty() || rated.getAsDouble() <= 0) {
      return new FanMotor(
          reading.quantity(),
          reading.part(),
          date,
          amps,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Verdict.UNKNOWN);
    }
    double load = 100 * amps / rated.getAsDouble();
    return new FanMotor(
        reading.quantity(),
        reading.part(),
        date,
        amps,
        rated,
        OptionalDouble.of(load),
        verdict(load));
  }

  private Verdict verdict(double loadPercent) {
    if (limits.under(LimitName.FAN_LOAD_LEAST, loadPercent)) {
      return Verdict.UNDERLOADED;
    }
    return limits.over(LimitName.FAN_LOAD_MOST, loadPercent) ? Verdict.OVERLOADED : Verdict.NORMAL;
  }

  private record Compressor(OptionalDouble amps, Optional<LocalDate> date, OptionalDouble usual) {

    OptionalDouble changePercent() {
      return usual.isPresent() && usual.getAsDouble() > 0
          ? OptionalDouble.of(100 * (amps.orElseThrow() / usual.getAsDouble() - 1))
          : OptionalDouble.empty();
    }
  }

  /** Amps depend on both pressures, so only readings at like pressures are compared. */
  private Compressor compressor(Evidence evidence) {
    int from = Math.max(evidence.lastWork("compressor-replaced"), evidence.gasFrom());
    int latest = -1;
    double[] alike = new double[evidence.figures().size()];
    int count = 0;
    for (int i = evidence.figures().size() - 1; i >= from && i >= 0; i--) {
      VisitFigures figures = evidence.figures().get(i);
      if (Double.isNaN(figures.compressorA)) {
        continue;
      }
      if (latest < 0) {
        latest = i;
      } else if (alike(evidence.figures().get(latest), figures)) {
        alike[count++] = figures.compressorA;
      }
    }
    if (latest < 0) {
      return new Compressor(OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());
    }
    boolean enough = count >= limits.value(LimitName.COMPRESSOR_LEAST_READINGS);
    return new Compressor(
        OptionalDouble.of(evidence.figures().get(latest).compressorA),
        Optional.of(evidence.visit(latest).date()),
        enough
            ? OptionalDouble.of(TheilSen.median(Arrays.copyOf(alike, count)))
            : OptionalDouble.empty());
  }

  private boolean alike(VisitFigures one, VisitFigures other) {
    return alike(one.headKpa, other.headKpa) && alike(one.suctionKpa, other.suctionKpa);
  }

  private boolean alike(double kpa, double other) {
    return Math.abs(kpa - other) <= limits.value(LimitName.LIKE_PRESSURE) / 100 * kpa;
  }

  /** Index of the latest visit with a grade of the part that still holds; -1 for none. */
  static int latestGrade(Evidence evidence, String part, String mended) {
    for (int i = evidence.figures().size() - 1; i >= 0; i--) {
      Visit visit = evidence.visit(i);
      if (visit.did(mended)) {
        return -1;
      }
      if (visit.finding(part).isPresent()) {
        return i;
      }
    }
    return -1;
  }

  private static Optional<String> grade(Evidence evidence, int index, String part) {
    return index < 0 ? Optional.empty() : evidence.visit(index).finding(part);
  }

  private static Optional<LocalDate> date(Evidence evidence, int index) {
    return index < 0 ? Optional.empty() : Optional.of(evidence.visit(index).date());
  }
}
