package coldround.demo;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * Air outdoors, day by day. Monthly means of the day's low and high are rounded figures for a
 * valley in the Blue Ridge, from memory; the days wander about them and hot spells of the story
 * come on top.
 */
final class Weather {

  /** Mean low and high of a month, °C, at the valley floor. */
  private record Month(double lowC, double highC) {}

  private record HotSpell(LocalDate first, LocalDate last, double aboveC) {}

  private static final double VALLEY_FLOOR_M = 400;
  private static final double LAPSE_K_PER_M = 0.0065;
  private static final double PERSISTENCE = 0.75;

  private final List<Month> months;
  private final List<HotSpell> hotSpells;
  private final double[] anomalyK;

  private Weather(List<Month> months, List<HotSpell> hotSpells) {
    this.months = months;
    this.hotSpells = hotSpells;
    this.anomalyK = wander(new Chance("weather"));
  }

  static Weather read(RuleTables tables) {
    return new Weather(
        tables.read("climate.csv", "month", Weather::month),
        tables.read("hot-spells.csv", "first", Weather::hotSpell));
  }

  private static Month month(TableRow row) {
    return new Month(row.number("low_c"), row.number("high_c"));
  }

  private static HotSpell hotSpell(TableRow row) {
    return new HotSpell(row.date("first"), row.date("last"), row.number("above_c"));
  }

  private static double[] wander(Chance chance) {
    double[] days = new double[(int) ChronoUnit.DAYS.between(Story.FIRST_DAY, Story.LAST_DAY) + 1];
    double anomaly = 0;
    for (int i = 0; i < days.length; i++) {
      anomaly = PERSISTENCE * anomaly + chance.spread(1.7);
      days[i] = anomaly;
    }
    return days;
  }

  /**
   * @param shareOfDay 0 for the day's low, 1 for its high
   */
  double airC(LocalDate day, double elevationM, double shareOfDay) {
    double low = seasonal(day, false);
    double high = seasonal(day, true);
    double spell = spellK(day);
    double anomaly = anomalyK[(int) ChronoUnit.DAYS.between(Story.FIRST_DAY, day)];
    return low
        + (high - low) * shareOfDay
        + Math.max(anomaly, spell + Math.min(0.3, spell) * anomaly)
        - LAPSE_K_PER_M * (elevationM - VALLEY_FLOOR_M);
  }

  private double spellK(LocalDate day) {
    return hotSpells.stream()
        .filter(spell -> !day.isBefore(spell.first()) && !day.isAfter(spell.last()))
        .mapToDouble(HotSpell::aboveC)
        .findFirst()
        .orElse(0);
  }

  /** Straight between the middles of the months. */
  private double seasonal(LocalDate day, boolean high) {
    LocalDate middle = day.withDayOfMonth(15);
    LocalDate from = day.isBefore(middle) ? middle.minusMonths(1) : middle;
    LocalDate to = from.plusMonths(1);
    double share = (double) ChronoUnit.DAYS.between(from, day) / ChronoUnit.DAYS.between(from, to);
    return value(from, high) * (1 - share) + value(to, high) * share;
  }

  private double value(LocalDate day, boolean high) {
    Month month = months.get(day.getMonthValue() - 1);
    return high ? month.highC() : month.lowC();
  }
}
