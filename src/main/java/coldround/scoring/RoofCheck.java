package coldround.scoring;

import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.refrigerant.Refrigerant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Judges a split read at a condenser by the limits of the tables alone. */
public final class RoofCheck {

  private static final String JUDGED =
      "The split is {split}, {excess} over the {expected} expected; over {watch} it is watched,"
          + " over {limit} the coil is to be cleaned, at {full} all its points are lost";
  private static final String UNDER =
      "The split is {split}, {short} under the {expected} expected; less than {watch} under it is"
          + " usual";
  private static final String COOL =
      "The air entering the condenser is {ambient}, below {limit}: the condenser is too large for"
          + " the split of {split} to tell anything";
  private static final String IMPOSSIBLE =
      "A split of {split} is below {limit}: a wrong reading, or the condenser does not run free";

  private final Limits limits;
  private final Kinds kinds;
  private final Cautions cautions;
  private final RoofChecks checks;

  public RoofCheck(ScoringRules rules) {
    this.limits = rules.limits();
    this.kinds = rules.kinds();
    this.cautions = rules.cautions();
    this.checks = rules.roofChecks();
  }

  /**
   * What a reading says.
   *
   * @param why with the limit that decided
   * @param next what to look at, in order
   */
  public record Finding(double splitK, RoofVerdict verdict, Reason why, List<Reason> next) {
    public Finding {
      next = List.copyOf(next);
    }
  }

  /** Split of a kind of unit nothing is known of, as the form proposes it. */
  public double usualSplitK() {
    return kinds.usual().designSplitK();
  }

  /**
   * @param splitK read: condensing temperature less the air entering the condenser
   * @param expectedK the clean split of that unit, or what is usual
   */
  public Finding judge(double ambientC, double splitK, double expectedK) {
    RoofVerdict verdict = verdict(ambientC, splitK, splitK - expectedK);
    Reason why = why(verdict, ambientC, splitK, expectedK);
    return new Finding(splitK, verdict, why, checks.after(verdict));
  }

  private RoofVerdict verdict(double ambientC, double splitK, double excessK) {
    if (limits.under(LimitName.SPLIT_LEAST, splitK)) {
      return RoofVerdict.IMPOSSIBLE;
    }
    if (limits.under(LimitName.AMBIENT_LEAST, ambientC)) {
      return RoofVerdict.TOO_COOL;
    }
    if (limits.over(LimitName.EXCESS_WATCH, -excessK)) {
      return RoofVerdict.LOW;
    }
    if (!limits.over(LimitName.EXCESS_WATCH, excessK)) {
      return RoofVerdict.AS_EXPECTED;
    }
    if (!limits.over(LimitName.EXCESS_LIMIT, excessK)) {
      return RoofVerdict.WATCH;
    }
    return limits.over(LimitName.EXCESS_FULL, excessK) ? RoofVerdict.FAR : RoofVerdict.HIGH;
  }

  private Reason why(RoofVerdict verdict, double ambientC, double splitK, double expectedK) {
    Quantity split = Facts.kelvin(splitK);
    return switch (verdict) {
      case IMPOSSIBLE -> reason(verdict, IMPOSSIBLE, LimitName.SPLIT_LEAST, "split", split);
      case TOO_COOL ->
          reason(
              verdict,
              COOL,
              LimitName.AMBIENT_LEAST,
              "split",
              split,
              "ambient",
              Facts.celsius(ambientC));
      case LOW ->
          reason(
              verdict,
              UNDER,
              LimitName.EXCESS_WATCH,
              "split",
              split,
              "short",
              Facts.kelvin(expectedK - splitK),
              "expected",
              Facts.kelvin(expectedK),
              "watch",
              limits.shown(LimitName.EXCESS_WATCH));
      default -> judged(verdict, split, splitK - expectedK, expectedK);
    };
  }

  private Reason judged(RoofVerdict verdict, Quantity split, double excessK, double expectedK) {
    String template = excessK < 0 ? UNDER : JUDGED;
    return reason(
        verdict,
        template,
        verdict == RoofVerdict.FAR ? LimitName.EXCESS_FULL : limitOf(verdict),
        "split",
        split,
        excessK < 0 ? "short" : "excess",
        Facts.kelvin(Math.abs(excessK)),
        "expected",
        Facts.kelvin(expectedK),
        "watch",
        limits.shown(LimitName.EXCESS_WATCH),
        "limit",
        limits.shown(LimitName.EXCESS_LIMIT),
        "full",
        limits.shown(LimitName.EXCESS_FULL));
  }

  private static LimitName limitOf(RoofVerdict verdict) {
    return verdict == RoofVerdict.HIGH ? LimitName.EXCESS_LIMIT : LimitName.EXCESS_WATCH;
  }

  private Reason reason(
      RoofVerdict verdict, String template, LimitName name, Object... namesAndFacts) {
    Map<String, Object> facts = new LinkedHashMap<>(Facts.of(namesAndFacts));
    facts.putIfAbsent("limit", limits.shown(name));
    return new Reason("split-" + verdict.code(), template, facts, limits.source(name));
  }

  /** The sentences by which a reading is judged, with {name} where a fact goes. */
  public static Map<String, String> sentences() {
    return Map.of("judged", JUDGED, "under", UNDER, "too-cool", COOL, "impossible", IMPOSSIBLE);
  }

  /** The limits that decide, in K and °C. */
  public Map<String, Double> limits() {
    return Map.of(
        "splitLeast", limits.value(LimitName.SPLIT_LEAST),
        "ambientLeast", limits.value(LimitName.AMBIENT_LEAST),
        "watch", limits.value(LimitName.EXCESS_WATCH),
        "limit", limits.value(LimitName.EXCESS_LIMIT),
        "full", limits.value(LimitName.EXCESS_FULL));
  }

  /** What to look at after a verdict, in order. */
  public List<Reason> next(RoofVerdict verdict) {
    return checks.after(verdict);
  }

  /** What to beware of with gauges on that refrigerant, on a roof. */
  public List<String> cautions(Optional<Refrigerant> gas) {
    Set<String> situations = new TreeSet<>(Set.of("always", "electrical", "circuit", "roof"));
    gas.ifPresent(its -> situations.addAll(Situations.ofGas(its)));
    return cautions.of(situations);
  }
}
