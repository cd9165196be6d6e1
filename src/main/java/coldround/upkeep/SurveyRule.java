package coldround.upkeep;

import coldround.fleet.Site;
import coldround.scoring.Assessment;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Survey of a unit that too little is known of, with what is to be found out. */
final class SurveyRule implements UpkeepRule {

  private static final String TEMPLATE =
      "Too little is known of this unit ({because}). To find out: {missing}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<SurveyNeeds.Need> needs = needs(unit);
    SurveyNeeds.Need first =
        needs.stream().filter(SurveyNeeds.Need::decides).findFirst().orElse(null);
    if (first == null) {
      return List.of();
    }
    LocalDate date = date(unit, first);
    String because =
        needs.stream()
            .filter(SurveyNeeds.Need::decides)
            .map(need -> need.need())
            .collect(Collectors.joining(", "));
    String missing = needs.stream().map(SurveyNeeds.Need::text).collect(Collectors.joining("; "));
    return List.of(
        Ask.by(
            TaskCode.SURVEY,
            date,
            UnitCase.reason(
                "too-little-known",
                TEMPLATE,
                first.source(),
                "because",
                because,
                "missing",
                missing,
                "date",
                date)));
  }

  private static List<SurveyNeeds.Need> needs(UnitCase unit) {
    Assessment known = unit.assessment();
    UpkeepTables tables = unit.tables();
    List<SurveyNeeds.Need> needs = new ArrayList<>();
    need(needs, unit, "visit", notVisited(unit));
    double least = tables.limits().value(UpkeepLimit.COMPLETENESS_LEAST);
    need(needs, unit, "evidence", known.condition().completeness() < least);
    need(needs, unit, "kind", !tables.kinds().containsKey(unit.unit().kind()));
    boolean gas = tables.refrigerants().find(known.supply().refrigerant()).isPresent();
    need(needs, unit, "refrigerant", !gas);
    need(needs, unit, "split", !known.coil().splitKnown());
    need(needs, unit, "cut-out", known.trip().cutOutC().isEmpty());
    need(needs, unit, "charge", known.leak().chargeKg().isEmpty());
    need(needs, unit, "installed", unit.unit().installed() == null);
    need(needs, unit, "place", placeless(known.history().site()));
    return needs;
  }

  private static void need(
      List<SurveyNeeds.Need> needs, UnitCase unit, String name, boolean missing) {
    if (missing) {
      needs.add(unit.tables().needs().get(name));
    }
  }

  private static boolean placeless(Site site) {
    return site.latitude() == null || site.longitude() == null || site.designAmbient() == null;
  }

  private static boolean notVisited(UnitCase unit) {
    LocalDate last = unit.record().lastVisit();
    return last == null
        || unit.tables().limits().after(last, UpkeepLimit.SURVEY_GAP).isBefore(unit.today());
  }

  /** Never soon after a survey: what it could not find out, the next one will not either. */
  private static LocalDate date(UnitCase unit, SurveyNeeds.Need first) {
    UpkeepLimits limits = unit.tables().limits();
    LocalDate last = unit.record().lastVisit();
    if (last == null) {
      return unit.soon();
    }
    UpkeepLimit wait =
        first.need().equals("visit") ? UpkeepLimit.SURVEY_GAP : UpkeepLimit.SURVEY_AFTER;
    LocalDate after = limits.after(last, wait);
    LocalDate done = unit.done(TaskCode.SURVEY);
    return done == null
        ? after
        : WorkRecord.later(after, limits.after(done, UpkeepLimit.SURVEY_AGAIN));
  }
}
