package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.ElectricalState;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import java.time.LocalDate;
import java.util.List;

/**
 * Electrical inspection where the compressor draws other amps than it used to at like pressures.
 */
final class CompressorAmpsRule implements UpkeepRule {

  private static final String TEMPLATE =
      "The compressor drew {amps} on {read}, {change} off its usual {usual} at like pressures; more"
          + " than {limit} is looked into";

  @Override
  public List<Ask> asks(UnitCase unit) {
    ElectricalState state = unit.assessment().electrical();
    Limits limits = unit.tables().scoringLimits();
    if (state.compressorDate().isEmpty()
        || Math.abs(state.compressorChangePercent().orElse(0))
            <= limits.value(LimitName.COMPRESSOR_CHANGE)) {
      return List.of();
    }
    LocalDate read = state.compressorDate().get();
    LocalDate date = unit.tables().limits().after(read, UpkeepLimit.COMPRESSOR_LOOK_AFTER);
    return List.of(
        Ask.by(
            TaskCode.ELECTRICAL,
            date,
            UnitCase.reason(
                "compressor-amps",
                TEMPLATE,
                limits.source(LimitName.COMPRESSOR_CHANGE),
                "amps",
                new Quantity(state.compressorA().orElse(0), Measure.AMPERE),
                "read",
                read,
                "change",
                new Quantity(state.compressorChangePercent().getAsDouble(), Measure.PERCENT),
                "usual",
                new Quantity(state.compressorUsualA().orElse(0), Measure.AMPERE),
                "limit",
                limits.shown(LimitName.COMPRESSOR_CHANGE),
                "date",
                date)));
  }
}
