package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.scoring.FanMotor;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Fan motors by their amps against the nameplate. */
final class FanLoadRule implements UpkeepRule {

  private static final String LOOK =
      "The {fan} drew {amps} on {read}, {load} of its nameplate {rated}; below {least} or above"
          + " {most} it wants a look";
  private static final String REPLACE =
      "The {fan} drew {amps} on {read}, {load} of its nameplate {rated}; below {least} or above"
          + " {most} it wants replacing: bring a motor";

  // amps over amps, in percent: a motor right at a limit is within it
  private static final double ROUNDING_PERCENT = 1e-9;

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<FanMotor> fans = unit.assessment().electrical().fans();
    if (fans.isEmpty()) {
      return List.of();
    }
    List<Ask> asks = new ArrayList<>();
    for (FanMotor fan : fans) {
      if (fan.loadPercent().isPresent()) {
        add(unit, fan, fan.loadPercent().getAsDouble(), asks);
      }
    }
    return asks;
  }

  private static void add(UnitCase unit, FanMotor fan, double load, List<Ask> asks) {
    UpkeepLimits own = unit.tables().limits();
    Limits scoring = unit.tables().scoringLimits();
    if (outside(
        load, own.value(UpkeepLimit.FAN_REPLACE_BELOW), own.value(UpkeepLimit.FAN_REPLACE_ABOVE))) {
      Quantity least = own.shown(UpkeepLimit.FAN_REPLACE_BELOW);
      Quantity most = own.shown(UpkeepLimit.FAN_REPLACE_ABOVE);
      Source source = own.source(UpkeepLimit.FAN_REPLACE_BELOW);
      LocalDate date = own.after(fan.date(), UpkeepLimit.FAN_REPLACE_AFTER);
      asks.add(ask(fan, load, "-replace", REPLACE, least, most, source, date));
    } else if (outside(
        load, scoring.value(LimitName.FAN_LOAD_LEAST), scoring.value(LimitName.FAN_LOAD_MOST))) {
      Quantity least = scoring.shown(LimitName.FAN_LOAD_LEAST);
      Quantity most = scoring.shown(LimitName.FAN_LOAD_MOST);
      Source source = scoring.source(LimitName.FAN_LOAD_LEAST);
      LocalDate date = own.after(fan.date(), UpkeepLimit.FAN_LOOK_AFTER);
      asks.add(ask(fan, load, "-load", LOOK, least, most, source, date));
    }
  }

  private static boolean outside(double load, double least, double most) {
    return load < least - ROUNDING_PERCENT || load > most + ROUNDING_PERCENT;
  }

  private static Ask ask(
      FanMotor fan,
      double load,
      String suffix,
      String template,
      Quantity least,
      Quantity most,
      Source source,
      LocalDate date) {
    String name = fan.quantity().replace('_', ' ') + " motor";
    return Ask.by(
        TaskCode.FAN,
        date,
        UnitCase.reason(
            fan.quantity().replace('_', '-') + suffix,
            template,
            source,
            "fan",
            fan.part().isEmpty() ? name : name + " " + fan.part(),
            "amps",
            new Quantity(fan.measuredA(), Measure.AMPERE),
            "read",
            fan.date(),
            "load",
            new Quantity(load, Measure.PERCENT),
            "rated",
            new Quantity(fan.ratedA().orElse(0), Measure.AMPERE),
            "least",
            least,
            "most",
            most,
            "date",
            date));
  }
}
