package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Thermostat check by the box temperature against its set point and against food safety. */
final class BoxTemperatureRule implements UpkeepRule {

  // readings and limits reach °C by different ways, so equal ones may differ in the last digits
  private static final double ROUNDING_K = 1e-9;
  private static final String OFF =
      "The box read {box} on {read}, {off} off its set point of {setPoint}; more than {limit} wants"
          + " the thermostat checked";
  private static final String OVER =
      "The box read {box} on {read}, over the limit of {limit} for its kind";
  private static final String SET =
      "The set point of {setPoint} is over the limit of {limit} for food";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<Ask> asks = new ArrayList<>();
    Optional<WorkRecord.Read> box = unit.record().latest("box");
    Optional<Quantity> setPoint = unit.unit().plate("box_setpoint");
    BoxLimits.BoxLimit limit = unit.tables().boxes().find(unit.unit().kind()).orElse(null);
    if (box.isPresent() && setPoint.isPresent()) {
      offSetPoint(unit, box.get(), setPoint.get(), asks);
    }
    if (box.isPresent() && limit != null && over(box.get().value(), limit)) {
      overLimit(unit, box.get(), limit, asks);
    }
    if (setPoint.isPresent() && limit != null && limit.food() && over(setPoint.get(), limit)) {
      setTooWarm(unit, setPoint.get(), limit, asks);
    }
    return asks;
  }

  private static boolean over(Quantity temperature, BoxLimits.BoxLimit limit) {
    return temperature.base() > limit.most().base() + ROUNDING_K;
  }

  private static void offSetPoint(
      UnitCase unit, WorkRecord.Read box, Quantity setPoint, List<Ask> asks) {
    UpkeepLimits limits = unit.tables().limits();
    double off = Math.abs(box.value().base() - setPoint.base());
    if (off <= limits.value(UpkeepLimit.BOX_OFF_SETPOINT) + ROUNDING_K) {
      return;
    }
    LocalDate date = limits.after(box.date(), UpkeepLimit.BOX_OFF_AFTER);
    Reason reason =
        UnitCase.reason(
            "box-off-set-point",
            OFF,
            limits.source(UpkeepLimit.BOX_OFF_SETPOINT),
            "box",
            box.value(),
            "read",
            box.date(),
            "off",
            new Quantity(off, Measure.DELTA_K),
            "setPoint",
            setPoint,
            "limit",
            limits.shown(UpkeepLimit.BOX_OFF_SETPOINT),
            "date",
            date);
    asks.add(Ask.by(TaskCode.THERMOSTAT, date, reason));
  }

  private static void overLimit(
      UnitCase unit, WorkRecord.Read box, BoxLimits.BoxLimit limit, List<Ask> asks) {
    UpkeepLimit after =
        limit.food() ? UpkeepLimit.FOOD_LIMIT_AFTER : UpkeepLimit.FROZEN_LIMIT_AFTER;
    LocalDate date = unit.tables().limits().after(box.date(), after);
    Reason reason =
        UnitCase.reason(
            limit.food() ? "box-over-food-limit" : "box-over-frozen-limit",
            OVER,
            limit.source(),
            "box",
            box.value(),
            "read",
            box.date(),
            "limit",
            limit.most(),
            "date",
            date);
    asks.add(Ask.by(TaskCode.THERMOSTAT, date, reason));
  }

  private static void setTooWarm(
      UnitCase unit, Quantity setPoint, BoxLimits.BoxLimit limit, List<Ask> asks) {
    LocalDate from = unit.countedFrom(TaskCode.THERMOSTAT);
    LocalDate date =
        from == null ? unit.soon() : unit.tables().limits().after(from, UpkeepLimit.BOX_OFF_AFTER);
    Reason reason =
        UnitCase.reason(
            "set-point-over-food-limit",
            SET,
            limit.source(),
            "setPoint",
            setPoint,
            "limit",
            limit.most(),
            "date",
            date);
    asks.add(Ask.by(TaskCode.THERMOSTAT, date, reason));
  }
}
