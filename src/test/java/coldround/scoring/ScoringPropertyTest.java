package coldround.scoring;

import static coldround.scoring.UnitFile.TODAY;
import static coldround.scoring.UnitFile.factor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What must hold for any unit. */
class ScoringPropertyTest {

  private static final List<String> GRADES =
      List.of("clean", "light", "moderate", "heavy", "blocked");
  private static final List<String> MODES =
      List.of("high-head-lockout", "drain-blocked", "coil-iced", "refrigerant-leak", "haunted");

  /** Splits of a coil that fouls at a steady rate between cleanings, with errors of the gauges. */
  private static UnitFile fouling(Random chance, double fahrenheitADay) {
    UnitFile file = new UnitFile();
    int cleanedDaysAgo = 950;
    for (int daysAgo = 900; daysAgo >= 0; daysAgo -= 20 + chance.nextInt(60)) {
      double ambientF = 62 + 20 * chance.nextDouble();
      double splitF = 28 + fahrenheitADay * (cleanedDaysAgo - daysAgo) + 2 * chance.nextGaussian();
      UnitFile.VisitRow visit = file.visit(daysAgo).split(ambientF, splitF);
      boolean due = chance.nextInt(4) == 0 || cleanedDaysAgo - daysAgo > 300;
      if (due && daysAgo > 60) {
        visit.purpose("breakdown").cleaned();
        cleanedDaysAgo = daysAgo;
      }
    }
    return file;
  }

  @Property(tries = 300)
  void moreFoulingNeverRaisesTheScore(
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0, max = 0.06) double less,
      @ForAll @DoubleRange(min = 0, max = 0.03) double more) {
    double clean = fouling(new Random(seed), less).assessed().condition().score();
    double dirty = fouling(new Random(seed), less + more).assessed().condition().score();
    assertTrue(dirty <= clean, dirty + " after more fouling, " + clean + " before");
  }

  /** Unless it is read soon after a cleaning, where it sets the clean split itself. */
  @Property(tries = 300)
  void aHigherLatestSplitNeverRaisesTheScore(
      @ForAll long seed,
      @ForAll @DoubleRange(min = 6, max = 60) double splitF,
      @ForAll @DoubleRange(min = 0, max = 20) double more) {
    UnitFile low = fouling(new Random(seed), 0.05);
    low.visit(0).split(75, splitF);
    UnitFile high = fouling(new Random(seed), 0.05);
    high.visit(0).split(75, Math.min(70, splitF + more));
    assertTrue(high.assessed().condition().score() <= low.assessed().condition().score());
  }

  @Property(tries = 300)
  void aWorseGradeNeverRaisesTheScore(
      @ForAll long seed, @ForAll @IntRange(min = 0, max = 3) int grade) {
    double before = graded(seed, grade).assessed().condition().score();
    double after = graded(seed, grade + 1).assessed().condition().score();
    assertTrue(after <= before);
  }

  private static UnitFile graded(long seed, int grade) {
    UnitFile file = fouling(new Random(seed), 0.03);
    file.visit(3).found("condenser_coil", GRADES.get(grade));
    return file;
  }

  @Property(tries = 500)
  void aCleaningWithALowerSplitNeverLowersTheScore(
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0, max = 0.08) double rate,
      @ForAll @DoubleRange(min = 0, max = 1) double share) {
    UnitFile file = fouling(new Random(seed), rate);
    Assessment before = file.assessed();
    double expectedF = before.coil().splitK() * 1.8;
    file.visit(0).split(80, Math.min(70, 6 + share * (expectedF - 6))).cleaned();
    Assessment after = file.assessed();
    assertTrue(
        factor(after, "coil").lost() <= factor(before, "coil").lost(),
        factor(after, "coil") + " after, " + factor(before, "coil") + " before");
  }

  @Provide
  Arbitrary<Long> seeds() {
    return Arbitraries.longs();
  }

  @Property(tries = 200)
  void theOrderOfVisitsDoesNotMatter(@ForAll("seeds") long seed) {
    UnitHistory history = anything(new Random(seed)).history();
    List<Visit> shuffled = new ArrayList<>(history.visits());
    Collections.shuffle(shuffled, new Random(seed + 1));
    UnitHistory other =
        new UnitHistory(history.site(), history.unit(), shuffled, history.reportedFaults());
    assertEquals(
        Rules.SCORER.assess(history, TODAY).condition(),
        Rules.SCORER.assess(other, TODAY).condition());
  }

  @Property(tries = 200)
  void whatComesLaterIsNotKnownBefore(
      @ForAll("seeds") long seed, @ForAll @IntRange(min = 0, max = 800) int daysAgo) {
    UnitFile file = anything(new Random(seed));
    Condition before = file.assessed(TODAY.minusDays(daysAgo)).condition();
    UnitHistory known = file.history().asOf(TODAY.minusDays(daysAgo));
    boolean changed =
        file.history().visits().stream().anyMatch(visit -> visit.did("refrigerant-changed"));
    if (!changed) {
      assertEquals(before, Rules.SCORER.assess(known, TODAY.minusDays(daysAgo)).condition());
    }
  }

  @Property(tries = 500)
  void anyUnitIsScoredWithinItsRange(@ForAll("seeds") long seed) {
    Condition condition = anything(new Random(seed)).assessed().condition();
    double lost = condition.factors().stream().mapToDouble(FactorScore::lost).sum();
    assertEquals(100 - lost, condition.score(), 1e-9);
    assertTrue(condition.low() <= condition.score() && condition.score() <= condition.high());
    assertTrue(condition.completeness() >= 0 && condition.completeness() <= 1);
    assertEquals(11, condition.diagnostics().size());
    for (FactorScore factor : condition.factors()) {
      assertTrue(!factor.reasons().isEmpty(), factor.factor());
    }
  }

  /** A record as bad as records get. */
  private static UnitFile anything(Random chance) {
    UnitFile file = new UnitFile();
    file.kind = pick(chance, "walk-in-freezer", "chiller", "ice-machine", "heat-pump", "spaceship");
    file.refrigerant = pick(chance, "R-404A", "R-22", "R-744", "R-12", "", "R-0", "r404a");
    file.place = pick(chance, "roof", "attic", "indoors", "", "cellar");
    file.surroundings = pick(chance, "greasy", "", "swamp");
    file.jurisdiction = pick(chance, "US", "US-CA", "DE", "", "??");
    file.installed = chance.nextBoolean() ? null : TODAY.minusDays(chance.nextInt(9000) - 500);
    if (chance.nextBoolean()) {
      file.plate("high_cutout", chance.nextInt(500), "psig");
      file.plate("condenser_fan_rated", chance.nextInt(3), "A");
      file.plate("charge", chance.nextInt(60), "lb");
    }
    for (int i = chance.nextInt(15); i > 0; i--) {
      visit(chance, file.visit(chance.nextInt(1500) - 100));
    }
    for (int i = chance.nextInt(4); i > 0; i--) {
      int daysAgo = chance.nextInt(1500) - 100;
      file.fault(daysAgo, MODES.get(chance.nextInt(5)), chance.nextBoolean() ? null : daysAgo - 3);
    }
    return file;
  }

  private static void visit(Random chance, UnitFile.VisitRow visit) {
    visit.purpose(pick(chance, "planned", "breakdown", "survey", ""));
    if (chance.nextInt(4) > 0) {
      visit.read("ambient", chance.nextInt(130), "degF");
      visit.read("head_pressure", chance.nextInt(600), "psig");
    } else if (chance.nextBoolean()) {
      visit.notTaken("head_pressure", "no ports").notTaken("ambient", "forgot");
    }
    visit.read("suction_pressure", chance.nextInt(100) - 10, "psig");
    visit.read("suction_line", chance.nextInt(80), "degF");
    visit.read("box", chance.nextInt(60), "degF");
    visit.read("condenser_fan", chance.nextInt(3), "A");
    visit.read("voltage_l1_l2", chance.nextInt(240), "V");
    visit.read("voltage_l2_l3", chance.nextInt(240), "V");
    visit.read("voltage_l1_l3", chance.nextInt(240), "V");
    if (chance.nextInt(3) == 0) {
      visit.read("refrigerant_added", chance.nextInt(9), "lb");
      visit.found("condenser_coil", pick(chance, "heavy", "clean", "sticky"));
      visit.found("contactor", pick(chance, "worn", "good", "odd"));
    }
    if (chance.nextInt(4) == 0) {
      visit.did(pick(chance, "condenser-coil-cleaned", "refrigerant-changed", "leak-repaired"));
      visit.fault(MODES.get(chance.nextInt(5)));
    }
  }

  private static String pick(Random chance, String... words) {
    return words[chance.nextInt(words.length)];
  }
}
