package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.CoilState;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import java.time.LocalDate;
import java.util.List;

/** Condenser cleaning by the day on which the split is too far above that of the clean coil. */
final class ExcessLimitRule implements UpkeepRule {

  private static final String TEMPLATE =
      "The split is expected to stand {excess} above the clean split of {cleanSplit} today and to"
          + " grow by {fouling}; it reaches the limit of {limit} on {date}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    CoilState coil = unit.coil();
    if (!coil.splitKnown() && coil.lastCleaned().isEmpty()) {
      return List.of();
    }
    Limits limits = unit.tables().scoringLimits();
    LocalDate date =
        Crossing.day(
            unit.today(),
            coil.excessK(),
            limits.value(LimitName.EXCESS_LIMIT),
            coil.foulingKPerDay(),
            DirtSince.notBefore(unit));
    if (date == null) {
      return List.of();
    }
    return List.of(
        Ask.by(
            TaskCode.CONDENSER,
            date,
            UnitCase.reason(
                "excess-limit",
                TEMPLATE,
                limits.source(LimitName.EXCESS_LIMIT),
                "excess",
                new Quantity(coil.excessK(), Measure.DELTA_K),
                "cleanSplit",
                new Quantity(coil.clean().splitK(), Measure.DELTA_K),
                "cleanSplitFrom",
                coil.clean().source().toString(),
                "fouling",
                new Quantity(coil.foulingKPerDay(), Measure.DELTA_K_PER_DAY),
                "limit",
                limits.shown(LimitName.EXCESS_LIMIT),
                "date",
                date)));
  }
}
