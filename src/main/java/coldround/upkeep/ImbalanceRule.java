package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.scoring.ElectricalState;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import java.time.LocalDate;
import java.util.List;

/** Electrical inspection by the imbalance of the line voltages (NEMA MG 1). */
final class ImbalanceRule implements UpkeepRule {

  private static final String LOOK =
      "Line voltages read on {read} are {imbalance} off balance, more than {limit}: look at supply"
          + " and terminals";
  private static final String STOP =
      "Line voltages read on {read} are {imbalance} off balance; above {limit} a motor must not run";

  @Override
  public List<Ask> asks(UnitCase unit) {
    ElectricalState state = unit.assessment().electrical();
    if (state.imbalancePercent().isEmpty() || state.voltageDate().isEmpty()) {
      return List.of();
    }
    double percent = state.imbalancePercent().getAsDouble();
    LocalDate read = state.voltageDate().get();
    Limits scoring = unit.tables().scoringLimits();
    UpkeepLimits own = unit.tables().limits();
    if (percent > scoring.value(LimitName.IMBALANCE_MOST)) {
      LocalDate date = own.after(read, UpkeepLimit.IMBALANCE_STOP_AFTER);
      Quantity limit = scoring.shown(LimitName.IMBALANCE_MOST);
      Source source = scoring.source(LimitName.IMBALANCE_MOST);
      return List.of(ask("voltage-imbalance-stop", STOP, source, percent, read, limit, date));
    }
    if (percent > own.value(UpkeepLimit.IMBALANCE_LOOK)) {
      LocalDate date = own.after(read, UpkeepLimit.IMBALANCE_LOOK_AFTER);
      Quantity limit = own.shown(UpkeepLimit.IMBALANCE_LOOK);
      Source source = own.source(UpkeepLimit.IMBALANCE_LOOK);
      return List.of(ask("voltage-imbalance", LOOK, source, percent, read, limit, date));
    }
    return List.of();
  }

  private static Ask ask(
      String code,
      String template,
      Source source,
      double percent,
      LocalDate read,
      Quantity limit,
      LocalDate date) {
    return Ask.by(
        TaskCode.ELECTRICAL,
        date,
        UnitCase.reason(
            code,
            template,
            source,
            "read",
            read,
            "imbalance",
            new Quantity(percent, Measure.PERCENT),
            "limit",
            limit,
            "date",
            date));
  }
}
