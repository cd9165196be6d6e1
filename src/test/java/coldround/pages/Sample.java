package coldround.pages;

import coldround.fleet.Fault;
import coldround.fleet.Reading;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.Condition;
import coldround.scoring.Diagnostic;
import coldround.scoring.FactorScore;
import coldround.scoring.FleetLine;
import coldround.upkeep.Task;
import coldround.upkeep.TaskReason;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** An invented walk-in cooler on a greasy roof, assessed on a day in June. */
public final class Sample {

  public static final LocalDate DAY = LocalDate.of(2026, 6, 10);

  private static final double K_PER_F = 1 / 1.8;
  private static final Source LIMITS =
      new Source("limits.csv", "excess-split", "common practice, no source");

  private Sample() {}

  public static FleetLine line() {
    Condition condition = condition();
    List<FleetLine.Points> points =
        condition.factors().stream()
            .map(f -> new FleetLine.Points(f.factor(), f.weight(), f.lost(), f.known()))
            .toList();
    return new FleetLine(
        "7",
        "KVS",
        "Kestrel Valley School Division",
        "HGH",
        "High school kitchen",
        "WIC-1",
        "walk-in-cooler",
        "Thornfield",
        "WC 120",
        "R-404A",
        LocalDate.of(2007, 4, 2),
        DAY,
        condition.score(),
        condition.low(),
        condition.high(),
        condition.completeness(),
        points,
        LocalDate.of(2026, 6, 1),
        "condenser-coil-cleaning");
  }

  public static Condition condition() {
    return Condition.of(
        DAY,
        0.81,
        List.of(
            factor("age", 25, 17.3, 17.3, 17.3, true, reason("past-median-life")),
            factor("refrigerant", 20, 9.6, 9.6, 9.6, true, reason("supply-falls")),
            factor("coil", 25, 14.2, 11.0, 17.5, true, reason("excess-split")),
            factor("repeat-faults", 30, 8.1, 0, 21.3, false, reason("no-fault-list"))),
        List.of(
            new Diagnostic("condensingSplit", kelvin(41), ""),
            new Diagnostic("splitAboveClean", kelvin(12.5), ""),
            new Diagnostic("tripAmbient", Quantity.of(98.4, "degF"), ""),
            new Diagnostic("expectedHead", Quantity.of(276, "psig"), ""),
            new Diagnostic(
                "voltageImbalance", null, "The voltages between all three legs on one visit")),
        List.of("Isolate and lock out before opening a panel.", "Roof: work at height."));
  }

  private static FactorScore factor(
      String name,
      double weight,
      double lost,
      double least,
      double most,
      boolean known,
      Reason reason) {
    return new FactorScore(name, weight, lost, least, most, known, List.of(reason));
  }

  private static Quantity kelvin(double fahrenheit) {
    return Quantity.of(fahrenheit, "deltaF");
  }

  static Reason reason(String code) {
    return new Reason(
        code,
        "The split is {excess} above the clean split of {clean}, read on {day}.",
        Map.of("excess", kelvin(12.5), "clean", kelvin(28.5), "day", LocalDate.of(2026, 5, 20)),
        LIMITS);
  }

  public static UnitHistory history() {
    return new UnitHistory(site(), unit(), visits(), faults());
  }

  private static Site site() {
    return new Site(
        "KVS",
        "HGH",
        "High school kitchen",
        "8 Orchard Hill, Harrisonburg, VA 22801",
        38.4,
        -78.8,
        Quantity.of(400, "m"),
        ZoneId.of("America/New_York"),
        "US-VA",
        "greasy",
        "Mo-Fr 06:00-14:00",
        Quantity.of(95, "degF"));
  }

  private static Unit unit() {
    return new Unit(
        "7",
        "KVS",
        "HGH",
        "WIC-1",
        "walk-in-cooler",
        "",
        "Thornfield",
        "WC 120",
        "",
        LocalDate.of(2007, 4, 2),
        "R-404A",
        "roof",
        null,
        Map.of(
            "charge", Quantity.of(8.5, "lb"),
            "high_cutout", Quantity.of(400, "psig"),
            "compressor_rated", Quantity.of(14.2, "A")));
  }

  private static List<Visit> visits() {
    Visit cleaning =
        visit(
            "W26-118",
            LocalDate.of(2025, 9, 15),
            "planned",
            List.of(
                Reading.taken("head_pressure", Quantity.of(262, "psig")),
                Reading.taken("ambient", Quantity.of(78, "degF"))),
            List.of("condenser-coil-cleaned", "inspected"));
    Visit breakdown =
        visit(
            "W26-204",
            LocalDate.of(2026, 5, 20),
            "breakdown",
            List.of(
                Reading.taken("head_pressure", Quantity.of(318, "psig")),
                new Reading("condenser_fan", "fan 2", Quantity.of(31, "A"), "", "far over plate"),
                Reading.notTaken("suction_pressure", "port blocked by shelving")),
            List.of("cut-out-reset"));
    return List.of(cleaning, breakdown);
  }

  private static Visit visit(
      String number, LocalDate day, String purpose, List<Reading> readings, List<String> work) {
    return new Visit(
        number,
        day,
        "T2",
        purpose,
        readings,
        Map.of("condenser_coil", "heavy"),
        work,
        purpose.equals("breakdown") ? List.of("high-head-lockout") : List.of(),
        "Grease & dust <all over> the coil");
  }

  private static List<Fault> faults() {
    return List.of(
        new Fault(
            LocalDate.of(2025, 7, 3),
            "high-head-lockout",
            "condenser dirty",
            LocalDate.of(2025, 7, 3),
            Quantity.of(4.5, "h"),
            Quantity.of(820, "USD"),
            ""));
  }

  public static SplitSeries splits() {
    List<SplitSeries.Point> points = new ArrayList<>();
    LocalDate first = LocalDate.of(2024, 1, 20);
    for (int month = 0; month < 28; month += 2) {
      int sinceCleaning = month < 8 ? month + 4 : (month - 8) % 12;
      boolean cold = month == 14;
      points.add(point(first.plusMonths(month), 29 + sinceCleaning * 1.3, cold));
    }
    return new SplitSeries(
        points,
        OptionalDouble.of(28.5 * K_PER_F),
        "lowest split within 45 days after a cleaning, 15 Sep 2025",
        OptionalDouble.of(43.5 * K_PER_F),
        List.of(LocalDate.of(2024, 9, 12), LocalDate.of(2025, 9, 15)),
        DAY,
        Optional.of(
            new SplitSeries.Outlook(41 * K_PER_F, 38.5 * K_PER_F, 43.2 * K_PER_F, 0.021, 0.004)));
  }

  private static SplitSeries.Point point(LocalDate day, double splitF, boolean cold) {
    Optional<Reason> leftOut = cold ? Optional.of(cold()) : Optional.empty();
    return new SplitSeries.Point(day, splitF * K_PER_F, true, leftOut);
  }

  static Reason cold() {
    Map<String, Object> facts = Map.of("least", Quantity.of(60, "degF"));
    return new Reason("too-cold", "the ambient was below {least}", facts, LIMITS);
  }

  public static List<Task> tasks() {
    return List.of(
        task(
            "condenser-coil-cleaning",
            LocalDate.of(2026, 6, 1),
            List.of(LocalDate.of(2026, 6, 1), LocalDate.of(2026, 7, 4)),
            Task.State.OVERDUE),
        task(
            "door-inspection",
            LocalDate.of(2026, 7, 20),
            List.of(LocalDate.of(2026, 7, 20)),
            Task.State.PLANNED));
  }

  private static Task task(String name, LocalDate due, List<LocalDate> dates, Task.State state) {
    return new Task(
        "7-" + name,
        unit(),
        name,
        due,
        due.minusDays(21),
        due.plusDays(7),
        60,
        "refrigeration-technician",
        0.82,
        state,
        dates.stream().map(day -> new TaskReason(day, reason(name))).toList(),
        List.of("Coil cleaner: eye and skin protection, rinse well."));
  }

  public static UnitReport report() {
    return new UnitReport(history(), condition(), tasks(), splits(), List.of(), List.of());
  }
}
