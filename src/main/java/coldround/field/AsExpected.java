package coldround.field;

import coldround.field.Verdict.Grade;
import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.Assessment;
import coldround.scoring.ElectricalState;
import coldround.scoring.FanMotor;
import coldround.scoring.LimitName;
import coldround.scoring.Limits;
import coldround.upkeep.Upkeep;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Says of readings that no rule finds fault with that they were looked at, or why they were not.
 */
final class AsExpected {

  private static final String VOLTAGE = "voltage";
  private static final String BOX = "box";

  private final Limits limits;
  private final Upkeep upkeep;

  AsExpected(Limits limits, Upkeep upkeep) {
    this.limits = limits;
    this.upkeep = upkeep;
  }

  void judge(Assessment assessment, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    fans(assessment.electrical(), visit, verdicts, leftOut);
    voltage(assessment.electrical(), visit, verdicts, leftOut);
    compressor(assessment.electrical(), visit, verdicts, leftOut);
    box(assessment, visit, verdicts, leftOut);
  }

  private void fans(
      ElectricalState state, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    Source source = limits.source(LimitName.FAN_LOAD_LEAST);
    for (FanMotor fan : state.fans()) {
      boolean its =
          fan.date().equals(visit.date())
              && read(visit, fan.quantity(), fan.part()).isPresent()
              && verdicts.stream().noneMatch(v -> v.isOf(fan.quantity(), fan.part()));
      if (its && fan.loadPercent().isEmpty()) {
        Map<String, Object> facts = facts("amps", amps(fan.measuredA()));
        String text = "No nameplate amps are on record to compare {amps} with";
        leftOut.add(
            new LeftOut(
                fan.quantity(), fan.part(), new Reason("no-nameplate", text, facts, source)));
      } else if (its && !fan.wantsLook()) {
        verdicts.add(fits(fan.quantity(), fan.part(), load(fan, source)));
      }
    }
  }

  private static Reason load(FanMotor fan, Source source) {
    return new Reason(
        "fan-load-as-expected",
        "{amps} of {rated} is {load} of the nameplate",
        facts(
            "amps",
            amps(fan.measuredA()),
            "rated",
            amps(fan.ratedA().orElseThrow()),
            "load",
            percent(fan.loadPercent().orElseThrow())),
        source);
  }

  private void voltage(
      ElectricalState state, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    List<Reading> volts =
        visit.readings().stream()
            .filter(reading -> reading.usable() && reading.quantity().startsWith("voltage_"))
            .toList();
    if (volts.isEmpty() || judged(verdicts, VOLTAGE)) {
      return;
    }
    Source source = limits.source(LimitName.IMBALANCE_DERATE);
    if (volts.size() < 3 || state.imbalancePercent().isEmpty()) {
      String text = "The imbalance needs all three line voltages; a single-phase unit has none";
      leftOut.add(new LeftOut(VOLTAGE, "", new Reason("voltages-missing", text, Map.of(), source)));
    } else if (state.voltageDate().equals(Optional.of(visit.date()))) {
      Map<String, Object> facts =
          facts(
              "imbalance",
              percent(state.imbalancePercent().getAsDouble()),
              "limit",
              limits.shown(LimitName.IMBALANCE_DERATE));
      String text = "Voltage imbalance {imbalance}, not above {limit}";
      verdicts.add(fits(VOLTAGE, "", new Reason("voltage-as-expected", text, facts, source)));
    }
  }

  private void compressor(
      ElectricalState state, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    boolean its =
        state.compressorDate().equals(Optional.of(visit.date()))
            && read(visit, "compressor", "").isPresent()
            && !judged(verdicts, "compressor");
    Source source = limits.source(LimitName.COMPRESSOR_CHANGE);
    if (its && state.compressorChangePercent().isPresent()) {
      Map<String, Object> facts =
          facts(
              "amps",
              amps(state.compressorA().orElseThrow()),
              "usual",
              amps(state.compressorUsualA().orElseThrow()),
              "change",
              percent(state.compressorChangePercent().getAsDouble()));
      String text = "Compressor {amps}, usual {usual} at like pressures";
      verdicts.add(
          fits("compressor", "", new Reason("compressor-as-expected", text, facts, source)));
    } else if (its) {
      String text =
          "A compressor's current is compared with its own earlier ones at like pressures, and"
              + " there are too few";
      Reason why =
          new Reason(
              "too-few-readings",
              text,
              facts("least", limits.shown(LimitName.COMPRESSOR_LEAST_READINGS)),
              limits.source(LimitName.COMPRESSOR_LEAST_READINGS));
      leftOut.add(new LeftOut("compressor", "", why));
    }
  }

  private void box(
      Assessment assessment, Visit visit, List<Verdict> verdicts, List<LeftOut> leftOut) {
    Optional<Quantity> box = visit.value(BOX);
    if (box.isEmpty() || judged(verdicts, BOX)) {
      return;
    }
    Optional<Source> rule = upkeep.boxRule(assessment.history().unit());
    if (rule.isPresent()) {
      Map<String, Object> facts = facts("box", box.get());
      assessment
          .history()
          .unit()
          .plate("box_setpoint")
          .ifPresent(set -> facts.put("setPoint", set));
      String text =
          facts.containsKey("setPoint")
              ? "Box {box}, set point {setPoint}"
              : "Box {box}, not over the limit for its kind";
      verdicts.add(fits(BOX, "", new Reason("box-as-expected", text, facts, rule.get())));
    } else {
      String text = "Neither a set point nor a limit for its kind is on record";
      Source source = limits.source(LimitName.READING_SD);
      leftOut.add(new LeftOut(BOX, "", new Reason("no-set-point", text, Map.of(), source)));
    }
  }

  private static boolean judged(List<Verdict> verdicts, String quantity) {
    return verdicts.stream().anyMatch(verdict -> verdict.isOf(quantity, ""));
  }

  private static Optional<Reading> read(Visit visit, String quantity, String part) {
    return visit.readings().stream()
        .filter(Reading::usable)
        .filter(reading -> reading.quantity().equals(quantity) && reading.part().equals(part))
        .findFirst();
  }

  private static Verdict fits(String quantity, String part, Reason reason) {
    return new Verdict(quantity, part, Grade.AS_EXPECTED, reason);
  }

  private static Quantity amps(double amps) {
    return new Quantity(amps, Measure.AMPERE);
  }

  private static Quantity percent(double percent) {
    return new Quantity(percent, Measure.PERCENT);
  }

  private static Map<String, Object> facts(Object... namesAndFacts) {
    Map<String, Object> facts = new LinkedHashMap<>();
    for (int i = 0; i < namesAndFacts.length; i += 2) {
      facts.put((String) namesAndFacts[i], namesAndFacts[i + 1]);
    }
    return facts;
  }
}
