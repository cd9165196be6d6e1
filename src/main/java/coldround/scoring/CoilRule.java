package coldround.scoring;

import coldround.fleet.Visit;
import coldround.reason.Reason;
import coldround.scoring.Cleanings.Cycle;
import coldround.scoring.FoulingPriors.FoulingPrior;
import coldround.scoring.GradeShares.GradeShare;
import coldround.scoring.statistics.Shrinkage;
import coldround.scoring.statistics.TheilSen;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Split, excess and fouling of a condenser coil on the day of the assessment. */
final class CoilRule {

  /** Half width of an 80 % band in standard deviations. */
  private static final double BAND = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.9);

  // efficiency of a median against a mean, of the normal law: sqrt(pi / 2)
  private static final double MEDIAN_SD = Math.sqrt(Math.PI / 2);

  /**
   * Excess on the day.
   *
   * @param splitSdK error of the split itself, without that of the clean split
   * @param known false when nothing was read since the last cleaning
   */
  private record Level(double excessK, double splitSdK, boolean known) {}

  private final Limits limits;
  private final GradeShares grades;
  private final FoulingPriors priors;
  private final Splits splits;
  private final CleanSplits cleanSplits;
  private final FoulingRate foulingRate;
  private final CoilSigns signs;

  CoilRule(ScoringRules rules, Splits splits) {
    this.limits = rules.limits();
    this.grades = rules.grades();
    this.priors = rules.fouling();
    this.splits = splits;
    this.cleanSplits = new CleanSplits(limits);
    this.foulingRate = new FoulingRate(limits);
    this.signs = new CoilSigns(rules, cleanSplits);
  }

  CoilState state(Evidence evidence, ElectricalState electrical, EvaporatorState evaporator) {
    List<SplitReading> readings = splits.of(evidence);
    List<Cycle> cycles = Cleanings.cycles(evidence, readings);
    Cycle current = cycles.get(cycles.size() - 1);
    CleanSplit given = cleanSplits.given(evidence);
    CleanSplit clean = cleanSplits.of(given, cycles);
    FoulingPrior prior = priors.of(evidence.site().surroundings());
    Shrinkage rate = foulingRate.of(prior.kPerDay(), clean, cycles);
    int graded = Electrics.latestGrade(evidence, "condenser_coil", Cleanings.CLEANED);
    Optional<GradeShare> grade = grade(evidence, graded);
    Level level = level(evidence, current, clean, rate, graded, grade);
    double excessK = Math.max(0, level.excessK);
    double splitK = clean.splitK() + excessK;
    double band = BAND * level.splitSdK;
    List<Reason> elsewhere =
        signs.of(evidence, current, given, clean, excessK, electrical, evaporator);
    return new CoilState(
        clean,
        readings,
        splitK,
        splitK - band,
        splitK + band,
        excessK,
        rate.mean(),
        rate.sd(),
        level.known,
        latestUsed(readings),
        Optional.ofNullable(current.cleaned()),
        gradeNow(grade, current),
        gradeDate(evidence, graded, grade, current),
        elsewhere);
  }

  private Optional<GradeShare> grade(Evidence evidence, int graded) {
    return graded < 0
        ? Optional.empty()
        : evidence.visit(graded).finding("condenser_coil").flatMap(grades::of);
  }

  private static Optional<String> gradeNow(Optional<GradeShare> grade, Cycle current) {
    return grade.isPresent()
        ? grade.map(GradeShare::grade)
        : Optional.ofNullable(current.cleaned()).map(day -> GradeShares.CLEAN);
  }

  private static Optional<LocalDate> gradeDate(
      Evidence evidence, int graded, Optional<GradeShare> grade, Cycle current) {
    return grade.isPresent()
        ? Optional.of(evidence.visit(graded)).map(Visit::date)
        : Optional.ofNullable(current.cleaned());
  }

  private static Optional<SplitReading> latestUsed(List<SplitReading> readings) {
    for (int i = readings.size() - 1; i >= 0; i--) {
      if (readings.get(i).used()) {
        return Optional.of(readings.get(i));
      }
    }
    return Optional.empty();
  }

  private Level level(
      Evidence evidence,
      Cycle current,
      CleanSplit clean,
      Shrinkage rate,
      int graded,
      Optional<GradeShare> grade) {
    if (!current.used().isEmpty()) {
      return measured(evidence, current, clean, rate);
    }
    if (grade.isPresent()) {
      double days = evidence.daysSince(evidence.visit(graded).date());
      double full = limits.value(LimitName.EXCESS_FULL);
      double excess = grade.get().share() * full + rate.mean() * days;
      double sd = Math.hypot(limits.value(LimitName.GRADE_SD) * full, rate.sd() * days);
      return new Level(excess, sd, false);
    }
    double days =
        current.cleaned() != null
            ? evidence.daysSince(current.cleaned())
            : limits.value(LimitName.UNRECORDED_CLEANING);
    double sd = Math.hypot(limits.value(LimitName.READING_SD), rate.sd() * days);
    return new Level(rate.mean() * days, sd, false);
  }

  /** Each reading is carried to the day at the fouling rate; the median of them counts. */
  private Level measured(Evidence evidence, Cycle current, CleanSplit clean, Shrinkage rate) {
    int from = current.sinceFan() < current.used().size() ? current.sinceFan() : 0;
    int count = current.used().size() - from;
    double[] carried = new double[count];
    double[] ages = new double[count];
    for (int i = 0; i < count; i++) {
      SplitReading reading = current.used().get(from + i);
      ages[i] = evidence.daysSince(reading.date());
      carried[i] = CleanSplits.splitK(reading) - clean.splitK() + rate.mean() * ages[i];
    }
    double readingSd = limits.value(LimitName.READING_SD);
    double ofMedian = count == 1 ? readingSd : readingSd * MEDIAN_SD / Math.sqrt(count);
    double sd = Math.hypot(Math.min(readingSd, ofMedian), rate.sd() * TheilSen.median(ages));
    return new Level(TheilSen.median(carried), sd, true);
  }
}
