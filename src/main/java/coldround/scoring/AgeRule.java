package coldround.scoring;

import coldround.reason.Reason;
import coldround.scoring.AgeState.Basis;
import coldround.scoring.LifeClasses.LifeClass;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.WeibullLife;
import java.time.LocalDate;
import java.time.Year;
import java.util.Optional;
import java.util.OptionalDouble;

/** How old a unit is, from the best evidence there is, and what its class lets expect. */
final class AgeRule {

  private final LifeClasses lives;

  AgeRule(ScoringRules rules) {
    this.lives = rules.lives();
  }

  AgeState state(Evidence evidence) {
    LifeClass life = lives.of(evidence.kind().lifeClass());
    LocalDate installed = evidence.unit().installed();
    Optional<LocalDate> seen = evidence.firstSeen();
    if (installed != null
        && !installed.isAfter(evidence.asOf())
        && seen.filter(installed::isAfter).isEmpty()) {
      double age = years(evidence, installed);
      return known(life, Basis.INSTALLED, age, age, age);
    }
    OptionalDouble made = evidence.unit().plateBase("serial_year");
    if (installed == null && made.isPresent()) {
      return ofSerialYear(evidence, life, serialYear(evidence), seen);
    }
    return seen.map(day -> atLeast(life, Basis.FIRST_SEEN, years(evidence, day)))
        .orElseGet(() -> atLeast(life, Basis.NONE, 0));
  }

  private static int serialYear(Evidence evidence) {
    return (int) evidence.unit().plate("serial_year").orElseThrow().value();
  }

  /** Made in that year: in use since some day of it, at the latest when it was first seen. */
  private static AgeState ofSerialYear(
      Evidence evidence, LifeClass life, int year, Optional<LocalDate> seen) {
    double oldest = years(evidence, Year.of(year).atDay(1));
    double seenFor = seen.map(day -> years(evidence, day)).orElse(0.0);
    double youngest = Math.max(seenFor, oldest - 1);
    double most = Math.max(youngest, oldest);
    return known(life, Basis.SERIAL_YEAR, (youngest + most) / 2, youngest, most);
  }

  private static double years(Evidence evidence, LocalDate day) {
    return Math.max(0, evidence.daysSince(day) / FaultTally.DAYS_A_YEAR);
  }

  private static AgeState known(
      LifeClass life, Basis basis, double age, double least, double most) {
    return new AgeState(
        life.code(),
        life.life(),
        basis,
        OptionalDouble.of(age),
        least,
        most,
        life.life().goneBy(age),
        life.life().remainingYears(age),
        life.source());
  }

  /**
   * Of units in use that are at least so old. Where units are replaced as they fail, the ages of
   * those in use have the density R(t) / mean; over it F averages to 1 − ∫R² / ∫R from that age on,
   * and R² is a Weibull survival again.
   */
  private static AgeState atLeast(LifeClass life, Basis basis, double least) {
    WeibullLife one = life.life();
    WeibullLife both =
        new WeibullLife(one.shape(), one.scaleYears() * Math.pow(2, -1 / one.shape()));
    double survives = 1 - one.goneBy(least);
    double lost = 1 - survives * both.remainingYears(least) / one.remainingYears(least);
    double standsFor = one.scaleYears() * Math.pow(-Math.log1p(-lost), 1 / one.shape());
    return new AgeState(
        life.code(),
        one,
        basis,
        basis == Basis.NONE ? OptionalDouble.empty() : OptionalDouble.of(standsFor),
        least,
        Double.POSITIVE_INFINITY,
        lost,
        one.remainingYears(standsFor),
        life.source());
  }

  /** Says so when the date of installation contradicts the rest. */
  static Optional<Reason> contradiction(Evidence evidence, AgeState age) {
    LocalDate installed = evidence.unit().installed();
    if (installed == null || age.basis() == Basis.INSTALLED) {
      return Optional.empty();
    }
    return Optional.of(
        evidence
            .firstSeen()
            .map(seen -> afterFirstRecord(installed, seen, age))
            .orElseGet(() -> later(installed, evidence.asOf(), age)));
  }

  private static Reason afterFirstRecord(LocalDate installed, LocalDate seen, AgeState age) {
    return new Reason(
        "installed-after-first-record",
        "The equipment list has it installed on {installed}, but it is on record since"
            + " {firstSeen}: one of the two is wrong, or another unit had this tag. The age is"
            + " taken from the first record",
        Facts.of("installed", installed, "firstSeen", seen),
        age.source());
  }

  private static Reason later(LocalDate installed, LocalDate asOf, AgeState age) {
    return new Reason(
        "installed-later",
        "The equipment list has it installed on {installed}, which is after {asOf}: not used",
        Facts.of("installed", installed, "asOf", asOf),
        age.source());
  }
}
