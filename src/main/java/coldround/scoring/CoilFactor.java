package coldround.scoring;

import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.scoring.GradeShares.GradeShare;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Points lost to the coils: the worst of split, condenser grade and evaporator grade. */
final class CoilFactor {

  private static final String SPLIT =
      "Condensing split expected now {split}, {excess} above its clean split of {clean} ({basis})."
          + " All is lost at {full}";
  private static final String FORECAST =
      "No split that counts since {since}: at the usual fouling of {rate} it would be {excess}"
          + " above its clean split of {clean} ({basis}) by now";
  private static final String NEVER =
      "No split that counts and no cleaning on record: scored as if cleaned {days} ago, at the"
          + " usual fouling of {rate}";
  private static final String GRADED = "Condenser coil found {grade} on {date}";
  private static final String CLEANED = "Condenser coil cleaned on {date}";
  private static final String EVAPORATOR =
      "Evaporator coil found {grade} on {date}; at worst it takes {most} of this factor";
  private static final String LEFT_OUT = "The split of {date} is left out. {why}";
  private static final String OLD =
      "The latest evidence of the coil is of {date}, older than {limit}: read and grade it again";

  private final double weight;
  private final Limits limits;
  private final GradeShares grades;

  CoilFactor(ScoringRules rules) {
    this.weight = rules.weights().of(Weights.COIL);
    this.limits = rules.limits();
    this.grades = rules.grades();
  }

  FactorScore score(Evidence evidence, CoilState coil, EvaporatorState evaporator) {
    Optional<GradeShare> grade = coil.grade().flatMap(grades::of);
    Optional<GradeShare> cold = evaporator.grade().flatMap(grades::of);
    double graded = grade.map(GradeShare::share).orElse(0.0);
    double evaporatorShare =
        cold.map(GradeShare::share).orElse(0.0) * limits.value(LimitName.EVAPORATOR_SHARE);
    double floor = Math.max(graded, evaporatorShare);
    double clean = coil.clean().splitK();
    boolean known = known(evidence, coil);
    double lost = Math.max(floor, share(coil.splitK() - clean));
    return FactorScore.of(
        Weights.COIL,
        weight,
        lost,
        Math.min(lost, least(coil, known, floor, evaporatorShare)),
        known ? Math.max(lost, share(coil.splitHighK() - clean)) : 1,
        known,
        reasons(evidence, coil, evaporator, grade, cold, known));
  }

  /** Share of the points at that excess, rising in a straight line to the whole. */
  private double share(double excessK) {
    return Math.min(1, Math.max(0, excessK / limits.value(LimitName.EXCESS_FULL)));
  }

  /** Best case: the low end of the split, and a grade given half a grade too low. */
  private double least(CoilState coil, boolean known, double floor, double evaporatorShare) {
    double grade = Math.max(0, floor - limits.value(LimitName.GRADE_SD));
    double split = share(coil.splitLowK() - coil.clean().splitK());
    return known
        ? Math.max(split, grade)
        : Math.max(0, evaporatorShare - limits.value(LimitName.GRADE_SD));
  }

  private boolean known(Evidence evidence, CoilState coil) {
    return latest(coil)
        .filter(day -> evidence.daysSince(day) <= limits.value(LimitName.EVIDENCE_VALID))
        .isPresent();
  }

  /** Day of the latest split that counts or grade that holds. */
  static Optional<LocalDate> latest(CoilState coil) {
    Optional<LocalDate> split = coil.latestSplit().map(SplitReading::date);
    Optional<LocalDate> grade = coil.gradeDate();
    return split.isPresent() && grade.isPresent()
        ? Optional.of(split.get().isAfter(grade.get()) ? split.get() : grade.get())
        : split.or(() -> grade);
  }

  private List<Reason> reasons(
      Evidence evidence,
      CoilState coil,
      EvaporatorState evaporator,
      Optional<GradeShare> grade,
      Optional<GradeShare> cold,
      boolean known) {
    List<Reason> reasons = new ArrayList<>();
    reasons.add(split(coil));
    grade.ifPresent(share -> reasons.add(graded(coil, share)));
    cold.filter(share -> share.share() > 0)
        .ifPresent(share -> reasons.add(evaporator(evaporator, share)));
    reasons.addAll(coil.elsewhere());
    leftOut(coil).ifPresent(reasons::add);
    if (!known) {
      latest(coil).ifPresent(day -> reasons.add(old(day)));
    }
    return reasons;
  }

  private Reason split(CoilState coil) {
    Quantity clean = Facts.kelvin(coil.clean().splitK());
    String basis = basis(coil.clean());
    if (coil.splitKnown()) {
      return new Reason(
          "split-above-clean",
          SPLIT,
          Facts.of(
              "split",
              Facts.kelvin(coil.splitK()),
              "excess",
              Facts.kelvin(coil.excessK()),
              "clean",
              clean,
              "basis",
              basis,
              "full",
              limits.shown(LimitName.EXCESS_FULL)),
          coil.clean().source());
    }
    Quantity rate = Facts.kelvinADay(coil.foulingKPerDay());
    if (coil.gradeDate().isEmpty()) {
      return new Reason(
          "coil-unknown",
          NEVER,
          Facts.of("days", limits.shown(LimitName.UNRECORDED_CLEANING), "rate", rate),
          limits.source(LimitName.UNRECORDED_CLEANING));
    }
    return new Reason(
        "split-expected",
        FORECAST,
        Facts.of(
            "since",
            coil.gradeDate().get(),
            "rate",
            rate,
            "excess",
            Facts.kelvin(coil.excessK()),
            "clean",
            clean,
            "basis",
            basis),
        coil.clean().source());
  }

  private static String basis(CleanSplit clean) {
    return switch (clean.basis()) {
      case MEASURED -> "lowest measured soon after a cleaning, " + clean.date().orElseThrow();
      case MEASURED_HELD_DOWN ->
          "the most that its design or kind allows; "
              + clean.date().orElseThrow()
              + " was higher soon after a cleaning";
      case DESIGN -> "design split of the equipment list";
      case KIND -> "usual for its kind; none measured soon after a cleaning";
    };
  }

  private static Reason graded(CoilState coil, GradeShare share) {
    boolean cleaned = coil.gradeDate().equals(coil.lastCleaned());
    return new Reason(
        "coil-" + share.grade(),
        cleaned ? CLEANED : GRADED,
        Facts.of("grade", share.grade(), "date", coil.gradeDate().orElseThrow()),
        share.source());
  }

  private Reason evaporator(EvaporatorState evaporator, GradeShare share) {
    return new Reason(
        "evaporator-" + share.grade(),
        EVAPORATOR,
        Facts.of(
            "grade",
            share.grade(),
            "date",
            evaporator.gradeDate().orElseThrow(),
            "most",
            Facts.share(limits.value(LimitName.EVAPORATOR_SHARE))),
        limits.source(LimitName.EVAPORATOR_SHARE));
  }

  /** Why the latest split does not count, when a later one than those used does not. */
  private static Optional<Reason> leftOut(CoilState coil) {
    int last = coil.readings().size() - 1;
    return last < 0
        ? Optional.empty()
        : coil.readings().get(last).leftOut().map(why -> why(coil.readings().get(last), why));
  }

  private static Reason why(SplitReading reading, Reason why) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("date", reading.date());
    why.inputs().forEach(facts::putIfAbsent);
    String template = LEFT_OUT.replace("{why}", why.template().replace("{date}", "{changed}"));
    if (why.inputs().containsKey("date")) {
      facts.put("changed", why.inputs().get("date"));
    }
    return new Reason("split-left-out", template, facts, why.source());
  }

  private Reason old(LocalDate day) {
    return new Reason(
        "coil-evidence-old",
        OLD,
        Facts.of("date", day, "limit", limits.shown(LimitName.EVIDENCE_VALID)),
        limits.source(LimitName.EVIDENCE_VALID));
  }
}
