package coldround.scoring;

import coldround.fleet.Visit;
import coldround.reason.Reason;
import coldround.scoring.Gas.Side;
import coldround.scoring.ReadingHabits.NotePhrase;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The condensing split of each visit, and which of them may be judged. */
final class Splits {

  private final Limits limits;
  private final ReadingHabits habits;
  private final Reason noAmbient;
  private final Reason noHead;
  private final Reason tooCold;
  private final Reason held;
  private final Reason tooLow;

  Splits(ScoringRules rules) {
    this.limits = rules.limits();
    this.habits = rules.habits();
    this.noAmbient = plain("no-ambient", "The air entering the condenser was not read");
    this.noHead = plain("no-head-pressure", "The head pressure was not read");
    this.tooCold =
        limit(
            "too-cold",
            "The air entering the condenser was below {limit}: the condenser is too large for a"
                + " split to tell anything",
            LimitName.AMBIENT_LEAST);
    this.held =
        limit(
            "head-control",
            "Condensing within {limit} of the head-pressure control: the control held it there",
            LimitName.HEAD_CONTROL_BAND);
    this.tooLow =
        limit(
            "split-too-low",
            "A split below {limit} is a wrong reading, or the unit had hardly any load",
            LimitName.SPLIT_LEAST);
  }

  private Reason plain(String code, String text) {
    return new Reason(code, text, Facts.of(), limits.source(LimitName.AMBIENT_LEAST));
  }

  private Reason limit(String code, String template, LimitName name) {
    return new Reason(code, template, Facts.of("limit", limits.shown(name)), limits.source(name));
  }

  /** One for each visit that speaks of head pressure, oldest first. */
  List<SplitReading> of(Evidence evidence) {
    double controlC = controlC(evidence);
    List<SplitReading> splits = new ArrayList<>();
    for (int i = 0; i < evidence.figures().size(); i++) {
      if (evidence.figures().get(i).speaksOfHead()) {
        splits.add(split(evidence, i, controlC));
      }
    }
    return splits;
  }

  private static double controlC(Evidence evidence) {
    return evidence
        .unit()
        .plate("head_control")
        .map(
            p ->
                evidence.gas().temperatureC(Side.MIDPOINT, p.pressureKpa(evidence.atmosphereKpa())))
        .orElse(Double.NaN);
  }

  private SplitReading split(Evidence evidence, int index, double controlC) {
    VisitFigures figures = evidence.figures().get(index);
    Gas gas = index < evidence.gasFrom() ? Gas.NONE : evidence.gas();
    double condensingC = gas.temperatureC(Side.MIDPOINT, figures.headKpa);
    double splitK = condensingC - figures.ambientC;
    Visit visit = figures.visit;
    return new SplitReading(
        visit.date(),
        visit.number(),
        optional(figures.ambientC),
        optional(condensingC),
        optional(splitK),
        habits.asFound(visit.purpose()),
        Double.isNaN(splitK)
            ? Optional.of(missing(evidence, index))
            : unfit(figures, condensingC, controlC));
  }

  private static OptionalDouble optional(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private Reason missing(Evidence evidence, int index) {
    VisitFigures figures = evidence.figures().get(index);
    if (Double.isNaN(figures.headKpa)) {
      return figures.noHead == null
          ? noHead
          : because("no-head-pressure", "No head pressure: {why}", figures.noHead);
    }
    if (index < evidence.gasFrom()) {
      LocalDate changed = evidence.gasChanged().orElseThrow();
      return new Reason(
          "other-refrigerant",
          "Read before the refrigerant was changed on {date}: not judged on the gas of today",
          Facts.of("date", changed),
          noHead.source());
    }
    if (evidence.gas().curve() == null) {
      return noCurve(evidence);
    }
    String outside = evidence.gas().whyOutside(figures.headKpa);
    if (!outside.isEmpty()) {
      return because("outside-table", "{why}", outside);
    }
    return figures.noAmbient == null
        ? noAmbient
        : because("no-ambient", "No ambient: {why}", figures.noAmbient);
  }

  private Reason because(String code, String template, String why) {
    return new Reason(code, template, Facts.of("why", why), noHead.source());
  }

  /** Why no pressure of the unit can be turned into a temperature. */
  Reason noCurve(Evidence evidence) {
    if (evidence.gasAfter().isPresent()) {
      return new Reason(
          "refrigerant-of-then-unknown",
          "The refrigerant was changed on {date}; what was in the unit before is not on record",
          Facts.of("date", evidence.gasAfter().get()),
          noHead.source());
    }
    String written = evidence.gas().written();
    return written.isEmpty()
        ? plain(
            "refrigerant-unknown", "The refrigerant is not on record: enter it from the nameplate")
        : because(
            "refrigerant-without-curve",
            "There is no saturation table to trust for '{why}': check its spelling",
            written);
  }

  private Optional<Reason> unfit(VisitFigures figures, double condensingC, double controlC) {
    if (limits.under(LimitName.AMBIENT_LEAST, figures.ambientC)) {
      return Optional.of(tooCold);
    }
    if (!Double.isNaN(controlC)
        && !limits.over(LimitName.HEAD_CONTROL_BAND, Math.abs(condensingC - controlC))) {
      return Optional.of(held);
    }
    if (limits.under(LimitName.SPLIT_LEAST, condensingC - figures.ambientC)) {
      return Optional.of(tooLow);
    }
    return habits.phraseIn(figures.visit.note()).map(Splits::noted);
  }

  private static Reason noted(NotePhrase phrase) {
    return new Reason(
        "noted-unsettled",
        "The note says '{phrase}': {why}",
        Facts.of("phrase", phrase.phrase(), "why", phrase.why()),
        phrase.source());
  }
}
