package coldround.scoring;

import coldround.reason.Reason;
import coldround.scoring.AgeState.Basis;
import coldround.scoring.LifeClasses.LifeClass;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Points lost to age: the share of the unit's class that is gone by its age. */
final class AgeFactor {

  private static final String IS = "This unit is {age} old; half of its class ({class}) is gone by";
  private static final String WITHIN = IS + " {median}, and {gone} by this age";
  private static final String PAST = IS + " {median} already, and {gone} by this age";
  private static final String BUILT =
      "No date of installation, but the serial number says the year: {age} old, give or take half a"
          + " year. Half of its class ({class}) is gone by {median}, {gone} by this age";
  private static final String SEEN =
      "No date of installation. It is on record since {firstSeen}, so it is at least {least} old;"
          + " units in use at least that old have lost {gone} of their class on average";
  private static final String UNKNOWN =
      "Neither a date of installation nor a visit on record: scored as the average unit in use,"
          + " with {gone} of its class gone. Enter the year from the nameplate";
  private static final String DIFFER =
      "Sources differ on the life of {class}; used is {used}, others say: {others}";

  private final double weight;
  private final LifeClasses lives;
  private final Map<String, Reason> differ = new HashMap<>();

  AgeFactor(ScoringRules rules) {
    this.weight = rules.weights().of(Weights.AGE);
    this.lives = rules.lives();
    for (KindRule kind : rules.kinds().all()) {
      LifeClass life = lives.of(kind.lifeClass());
      differ.put(life.code(), differ(life));
    }
  }

  private static Reason differ(LifeClass life) {
    return new Reason(
        "life-sources-differ",
        DIFFER,
        Facts.of(
            "class",
            life.name(),
            "used",
            life.source().citation(),
            "others",
            life.others().isEmpty() ? "nothing" : life.others()),
        life.source());
  }

  FactorScore score(Evidence evidence, AgeState age) {
    boolean known = age.basis() == Basis.INSTALLED || age.basis() == Basis.SERIAL_YEAR;
    List<Reason> reasons = new ArrayList<>();
    reasons.add(reason(evidence, age));
    AgeRule.contradiction(evidence, age).ifPresent(reasons::add);
    if (!lives.of(age.lifeClass()).others().isEmpty()) {
      reasons.add(differ.get(age.lifeClass()));
    }
    double most = Double.isInfinite(age.mostYears()) ? 1 : age.life().goneBy(age.mostYears());
    return FactorScore.of(
        Weights.AGE,
        weight,
        age.lostShare(),
        age.life().goneBy(age.leastYears()),
        most,
        known,
        reasons);
  }

  private Reason reason(Evidence evidence, AgeState age) {
    LifeClass life = lives.of(age.lifeClass());
    return switch (age.basis()) {
      case INSTALLED -> aged(life, age);
      case SERIAL_YEAR -> told("age-by-serial-year", BUILT, life, age);
      case FIRST_SEEN ->
          new Reason(
              "age-at-least",
              SEEN,
              Facts.of(
                  "firstSeen",
                  evidence.firstSeen().orElseThrow(),
                  "least",
                  Facts.years(age.leastYears()),
                  "gone",
                  Facts.share(age.lostShare())),
              life.source());
      case NONE ->
          new Reason(
              "age-unknown",
              UNKNOWN,
              Facts.of("gone", Facts.share(age.lostShare())),
              life.source());
    };
  }

  private static Reason aged(LifeClass life, AgeState age) {
    return age.ageYears().orElseThrow() > life.medianYears()
        ? told("past-median-life", PAST, life, age)
        : told("within-median-life", WITHIN, life, age);
  }

  private static Reason told(String code, String template, LifeClass life, AgeState age) {
    return new Reason(
        code,
        template,
        Facts.of(
            "age",
            Facts.years(age.ageYears().orElseThrow()),
            "class",
            life.name(),
            "median",
            Facts.years(life.medianYears()),
            "gone",
            Facts.share(age.lostShare())),
        life.source());
  }
}
