package coldround.field;

import coldround.field.Verdict.Grade;
import coldround.fleet.Visit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.refrigerant.ExpectedHead;
import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.SaturationCurve;
import coldround.scoring.Assessment;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import coldround.scoring.SplitReading;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The head pressure of a visit against what a clean condenser would have at the same ambient: by
 * the refrigerant's curve, over the air pressure of the site.
 */
final class HeadVerdict {

  private static final String QUANTITY = "head_pressure";
  private static final String ABOVE =
      "Head pressure is {difference} above what {ambient} expects: check the condenser and its fan";
  private static final String AS_FOUND =
      "Head pressure was {difference} above what {ambient} expects before the cleaning: read it"
          + " again to see what the cleaning gave back";
  private static final String BELOW =
      "Head pressure is {difference} below what {ambient} expects: check the charge, the load and"
          + " the reading";
  private static final String FITS =
      "Head pressure {measured} is what {ambient} expects of a clean condenser, {expected}";

  private final Limits limits;
  private final Refrigerants gases;

  HeadVerdict(Limits limits, Refrigerants gases) {
    this.limits = limits;
    this.gases = gases;
  }

  void judge(Assessment assessment, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    for (SplitReading split : assessment.coil().readings()) {
      boolean its = split.visit().equals(visit.number()) && split.date().equals(visit.date());
      if (its && split.used()) {
        judge(assessment, visit, split, verdicts, leftOut);
      } else if (its) {
        leftOut.add(new LeftOut(QUANTITY, "", split.leftOut().orElseThrow()));
      }
    }
  }

  private void judge(
      Assessment assessment,
      Visit visit,
      SplitReading split,
      List<Verdict> verdicts,
      List<LeftOut> leftOut) {
    SaturationCurve curve = gases.curve(assessment.history().unit().refrigerant()).orElseThrow();
    try {
      ExpectedHead expected =
          ExpectedHead.of(
              curve, split.ambientC().orElseThrow(), assessment.coil().clean().splitK());
      verdicts.add(verdict(assessment, visit, split, expected));
    } catch (OutsideTable outside) {
      leftOut.add(new LeftOut(QUANTITY, "", outside(outside)));
    }
  }

  private Reason outside(OutsideTable outside) {
    return new Reason(
        "outside-table",
        "{why}",
        Map.of("why", outside.getMessage()),
        limits.source(LimitName.EXCESS_WATCH));
  }

  private Verdict verdict(
      Assessment assessment, Visit visit, SplitReading split, ExpectedHead expected) {
    double excessK = split.splitK().orElseThrow() - assessment.coil().clean().splitK();
    boolean above = limits.over(LimitName.EXCESS_WATCH, excessK);
    boolean below = limits.over(LimitName.SPLIT_SHORT, -excessK);
    boolean act = limits.over(LimitName.EXCESS_LIMIT, excessK);
    LimitName limit =
        act ? LimitName.EXCESS_LIMIT : below ? LimitName.SPLIT_SHORT : LimitName.EXCESS_WATCH;
    boolean asFound = split.asFound() && visit.did("condenser-coil-cleaned");
    String code =
        above ? "head-above-expected" : below ? "head-below-expected" : "head-as-expected";
    String template = above ? (asFound ? AS_FOUND : ABOVE) : below ? BELOW : FITS;
    Grade grade = act ? Grade.ACT : above || below ? Grade.LOOK : Grade.AS_EXPECTED;
    Map<String, Object> facts = facts(assessment, visit, split, expected);
    facts.put("excess", new Quantity(excessK, Measure.DELTA_K));
    facts.put("limit", limits.shown(limit));
    return new Verdict(
        QUANTITY, "", grade, new Reason(code, template, facts, limits.source(limit)));
  }

  private static Map<String, Object> facts(
      Assessment assessment, Visit visit, SplitReading split, ExpectedHead expected) {
    double airKpa = assessment.history().site().atmosphereKpa();
    double measuredKpa = visit.value(QUANTITY).orElseThrow().pressureKpa(airKpa);
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("measured", new Quantity(measuredKpa - airKpa, Measure.KPAG));
    facts.put("expected", new Quantity(expected.pressureKpa() - airKpa, Measure.KPAG));
    facts.put(
        "difference",
        new Quantity(Math.abs(measuredKpa - expected.pressureKpa()), Measure.DELTA_KPA));
    facts.put("ambient", new Quantity(expected.ambientC(), Measure.DEG_C));
    facts.put("split", new Quantity(split.splitK().orElseThrow(), Measure.DELTA_K));
    facts.put("cleanSplit", new Quantity(expected.splitK(), Measure.DELTA_K));
    facts.put("airPressure", new Quantity(airKpa, Measure.KPA));
    facts.put("refrigerant", expected.designation());
    facts.put("curve", expected.curve());
    return facts;
  }
}
