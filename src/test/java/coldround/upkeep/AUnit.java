package coldround.upkeep;

import coldround.fleet.Reading;
import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.refrigerant.LeakMethod;
import coldround.scoring.AgeState;
import coldround.scoring.Assessment;
import coldround.scoring.CleanSplit;
import coldround.scoring.CoilState;
import coldround.scoring.Condition;
import coldround.scoring.ElectricalState;
import coldround.scoring.EvaporatorState;
import coldround.scoring.FanMotor;
import coldround.scoring.FaultEvent;
import coldround.scoring.FaultState;
import coldround.scoring.LeakState;
import coldround.scoring.MonthMargin;
import coldround.scoring.SplitReading;
import coldround.scoring.SupplyState;
import coldround.scoring.TripState;
import coldround.scoring.statistics.GammaPoisson;
import coldround.scoring.statistics.WeibullLife;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A unit in words of the trade, with states as an assessment would give them. */
final class AUnit {

  private static final Source SOURCE = new Source("test.csv", "row", "the test");

  LocalDate today = LocalDate.of(2026, 5, 1);
  String id = "u1k";
  String kind = "walk-in-cooler";
  String refrigerant = "R-404A";
  String place = "outdoors";
  LocalDate installed = LocalDate.of(2018, 6, 1);
  LocalDate retired;
  Site site = site("clean", "US-VA");
  final Map<String, Quantity> plate = new HashMap<>();
  final List<Visit> visits = new ArrayList<>();
  double completeness = 0.9;
  double cleanSplitK = 15;
  double excessK;
  double foulingKPerDay;
  boolean splitKnown;
  LocalDate lastCleaned;
  LocalDate splitRead;
  final List<Reason> elsewhere = new ArrayList<>();
  OptionalDouble cutOutC = OptionalDouble.of(62);
  double[] monthlyDesignC = new double[12];
  double tripLimitK = 5;
  final List<FaultEvent> faults = new ArrayList<>();
  double expectedFaults = 0.5;
  OptionalDouble imbalance = OptionalDouble.empty();
  LocalDate voltagesRead;
  final List<FanMotor> fans = new ArrayList<>();
  OptionalDouble compressorChange = OptionalDouble.empty();
  LocalDate compressorRead;
  final List<LeakState.Addition> additions = new ArrayList<>();
  boolean leakOver;
  boolean openLeak;
  final List<Reason> evaporatorFindings = new ArrayList<>();
  LocalDate evaporatorRead;

  AUnit() {
    Arrays.fill(monthlyDesignC, 20);
  }

  static Site site(String surroundings, String jurisdiction) {
    return new Site(
        "C",
        "S",
        "Site",
        "",
        38.4,
        -78.9,
        null,
        null,
        jurisdiction,
        surroundings,
        "",
        Quantity.of(95, "degF"));
  }

  static AUnit asOf(String today) {
    AUnit unit = new AUnit();
    unit.today = LocalDate.parse(today);
    return unit;
  }

  AUnit plate(String column, double value, String measure) {
    plate.put(column, Quantity.of(value, measure));
    return this;
  }

  AUnit did(String date, String... work) {
    visits.add(visit(date, "planned", List.of(), Map.of(), List.of(work)));
    return this;
  }

  AUnit graded(String date, String part, String grade, String... work) {
    visits.add(visit(date, "planned", List.of(), Map.of(part, grade), List.of(work)));
    return this;
  }

  AUnit read(String date, String quantity, double value, String measure) {
    Reading reading = Reading.taken(quantity, Quantity.of(value, measure));
    visits.add(visit(date, "planned", List.of(reading), Map.of(), List.of()));
    return this;
  }

  AUnit fault(String date, String mode, String... work) {
    faults.add(new FaultEvent(LocalDate.parse(date), mode, Optional.empty(), Optional.empty()));
    visits.add(visit(date, "breakdown", List.of(), Map.of(), List.of(work)));
    return this;
  }

  AUnit cameBack(String date, String mode, String repaired) {
    Optional<LocalDate> repair = Optional.of(LocalDate.parse(repaired));
    faults.add(new FaultEvent(LocalDate.parse(date), mode, repair, repair));
    visits.add(visit(date, "breakdown", List.of(), Map.of(), List.of()));
    return this;
  }

  AUnit dirty(double excessK, double foulingKPerDay, String cleaned) {
    this.excessK = excessK;
    this.foulingKPerDay = foulingKPerDay;
    this.splitKnown = true;
    this.lastCleaned = LocalDate.parse(cleaned);
    this.splitRead = lastCleaned;
    return did(cleaned, "condenser-coil-cleaned");
  }

  AUnit fan(String quantity, double measuredA, double ratedA, String date) {
    double load = 100 * measuredA / ratedA;
    fans.add(
        new FanMotor(
            quantity,
            "",
            LocalDate.parse(date),
            measuredA,
            OptionalDouble.of(ratedA),
            OptionalDouble.of(load),
            FanMotor.Verdict.NORMAL));
    return this;
  }

  static Reason sign(String code) {
    return new Reason(code, "a sign", Map.of(), SOURCE);
  }

  private Visit visit(
      String date,
      String purpose,
      List<Reading> readings,
      Map<String, String> findings,
      List<String> work) {
    String number = "V" + (visits.size() + 1);
    LocalDate day = LocalDate.parse(date);
    return new Visit(number, day, "", purpose, readings, findings, work, List.of(), "");
  }

  List<Task> tasks() {
    return Rules.UPKEEP.tasks(assessment(), today);
  }

  Optional<Task> task(String code) {
    return tasks().stream().filter(task -> task.task().equals(code)).findFirst();
  }

  Optional<TaskReason> reason(String task, String code) {
    return task(task).stream()
        .flatMap(found -> found.reasons().stream())
        .filter(reason -> reason.reason().code().equals(code))
        .findFirst();
  }

  /** The date that a reason of a task asks for, "" when the reason is not there. */
  String date(String task, String code) {
    return reason(task, code).map(reason -> reason.date().toString()).orElse("");
  }

  Assessment assessment() {
    Unit unit =
        new Unit(
            id,
            "C",
            "S",
            "T-1",
            kind,
            "",
            "",
            "",
            "",
            installed,
            refrigerant,
            place,
            retired,
            plate);
    return new Assessment(
        new UnitHistory(site, unit, visits, List.of()),
        today,
        Condition.of(today, completeness, List.of(), List.of(), List.of()),
        new AgeState(
            "walk-in-refrigeration",
            new WeibullLife(3, 12),
            AgeState.Basis.INSTALLED,
            OptionalDouble.of(8),
            8,
            8,
            0.2,
            5,
            SOURCE),
        new SupplyState(refrigerant, today, today.plusYears(5), 0.5, 0.5, 0.5, true, List.of()),
        coil(),
        trip(),
        faultState(),
        electrical(),
        new EvaporatorState(
            Optional.ofNullable(evaporatorRead),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            evaporatorFindings),
        leak());
  }

  private CoilState coil() {
    Optional<SplitReading> latest =
        Optional.ofNullable(splitRead)
            .map(
                date ->
                    new SplitReading(
                        date,
                        "V",
                        OptionalDouble.of(25),
                        OptionalDouble.of(25 + cleanSplitK),
                        OptionalDouble.of(cleanSplitK),
                        false,
                        Optional.empty()));
    return new CoilState(
        new CleanSplit(cleanSplitK, 1, CleanSplit.Basis.DESIGN, Optional.empty(), SOURCE),
        List.of(),
        cleanSplitK + excessK,
        cleanSplitK + excessK - 1,
        cleanSplitK + excessK + 1,
        excessK,
        foulingKPerDay,
        0.01,
        splitKnown,
        latest,
        Optional.ofNullable(lastCleaned),
        Optional.empty(),
        Optional.empty(),
        elsewhere);
  }

  private TripState trip() {
    if (cutOutC.isEmpty()) {
      return new TripState(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          OptionalDouble.empty(),
          List.of(),
          tripLimitK,
          Optional.empty(),
          Optional.of(sign("cut-out-unknown")));
    }
    double tripC = cutOutC.getAsDouble() - cleanSplitK - excessK;
    List<MonthMargin> months = new ArrayList<>();
    for (int i = 0; i <= 12; i++) {
      YearMonth month = YearMonth.from(today).plusMonths(i);
      double days = UnitCase.days(today, month.atEndOfMonth());
      double designC = monthlyDesignC[month.getMonthValue() - 1];
      months.add(new MonthMargin(month, designC, tripC - foulingKPerDay * days));
    }
    double designC = monthlyDesignC[today.getMonthValue() - 1];
    return new TripState(
        cutOutC,
        OptionalDouble.of(tripC),
        OptionalDouble.of(tripC - 1),
        OptionalDouble.of(tripC + 1),
        OptionalDouble.of(designC),
        Optional.of(SOURCE),
        OptionalDouble.of(tripC - designC),
        months,
        tripLimitK,
        Optional.empty(),
        Optional.empty());
  }

  private FaultState faultState() {
    return new FaultState(
        faults,
        List.of(),
        3,
        new GammaPoisson(1.2, 1.5),
        expectedFaults,
        0,
        2,
        0.1,
        Optional.empty(),
        true);
  }

  private ElectricalState electrical() {
    return new ElectricalState(
        Optional.ofNullable(voltagesRead),
        imbalance,
        OptionalDouble.empty(),
        fans,
        compressorChange.isPresent() ? OptionalDouble.of(10) : OptionalDouble.empty(),
        Optional.ofNullable(compressorRead),
        compressorChange.isPresent() ? OptionalDouble.of(9) : OptionalDouble.empty(),
        compressorChange,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  private LeakState leak() {
    Quantity charge = plate.get("charge");
    OptionalDouble kg =
        charge == null ? OptionalDouble.empty() : OptionalDouble.of(charge.to(Measure.KG).value());
    return new LeakState(
        additions,
        kg,
        LeakMethod.ANNUALIZING,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        leakOver,
        openLeak,
        Optional.empty(),
        List.of());
  }
}
