package coldround.refrigerant;

import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.table.RuleTables;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;

/** How often the law wants a circuit inspected for leaks, by place, gas, charge and detector. */
public final class LeakInspections {

  private static final String DUE =
      "{charge} of {refrigerant} ({tonnes} t CO2e) wants a leak inspection every {months} months"
          + " ({reference})";
  private static final String BY_DETECTOR =
      "A leak detection system that is checked each year stands in for the leak inspection of"
          + " {charge} of {refrigerant} ({reference})";
  private static final String NOT_EXCEEDED =
      "A leak inspection every {months} months is due only after the leak rate was over its"
          + " threshold ({reference})";
  private static final String EXEMPT =
      "Sealed for good and labelled so, {charge} of {refrigerant} ({tonnes} t CO2e) is exempt from"
          + " leak inspections ({reference})";
  private static final String TOO_LITTLE =
      "{charge} of {refrigerant} ({tonnes} t CO2e) is below the {limit} from which leak inspections"
          + " are due ({reference})";
  private static final String NO_RULE =
      "The tables hold no leak inspection duty for {refrigerant} in {category}, jurisdiction"
          + " '{jurisdiction}'";

  private final List<InspectionRule> rules;
  private final Jurisdictions jurisdictions;
  // a fleet stands in few places
  private final Map<String, InForce> inForce = new ConcurrentHashMap<>();

  LeakInspections(List<InspectionRule> rules, Jurisdictions jurisdictions) {
    this.rules = rules;
    this.jurisdictions = jurisdictions;
  }

  public static LeakInspections load(RuleTables tables) {
    return new LeakInspections(InspectionRule.read(tables), Jurisdictions.load(tables));
  }

  /**
   * @param exceeded true when the leak rate was over its threshold and no inspection has since
   *     shown that it is not
   */
  public InspectionDuty duty(ChargedCircuit circuit, boolean exceeded, LocalDate asOf) {
    InForce law = at(circuit.jurisdiction());
    List<InspectionRule> concerning = new ArrayList<>(law.rules().size());
    InspectionRule governing = null;
    for (InspectionRule rule : law.rules()) {
      if (rule.concerns(circuit, asOf)) {
        concerning.add(rule);
        boolean first = governing == null || rule.exempts() && !governing.exempts();
        governing = first && rule.inBand(circuit) ? rule : governing;
      }
    }
    return governing == null
        ? none(concerning, circuit, law.source())
        : governed(governing, circuit, exceeded);
  }

  /** The rules of one place, and where it says that they hold there. */
  private record InForce(List<InspectionRule> rules, Source source) {}

  private InForce at(String jurisdiction) {
    String place = jurisdiction == null ? "" : jurisdiction;
    InForce known = inForce.get(place);
    return known != null ? known : inForce.computeIfAbsent(place, this::inForceAt);
  }

  private InForce inForceAt(String jurisdiction) {
    Jurisdictions.Law law = jurisdictions.law(jurisdiction);
    return new InForce(
        rules.stream().filter(rule -> law.schedules().contains(rule.schedule())).toList(),
        law.source());
  }

  private static InspectionDuty governed(
      InspectionRule rule, ChargedCircuit circuit, boolean exceeded) {
    if (rule.exempts()) {
      return no(rule, circuit, "leak-inspection-exempt", EXEMPT);
    }
    if (rule.when().equals("after-exceeding") && !exceeded) {
      return no(rule, circuit, "leak-rate-not-exceeded", NOT_EXCEEDED);
    }
    OptionalInt months = circuit.detector() ? rule.monthsWithDetector() : rule.months();
    if (months.isEmpty()) {
      return no(rule, circuit, "leak-detector-instead", BY_DETECTOR);
    }
    return new InspectionDuty(
        months, rule.detectorMandatory(), () -> due(rule, circuit, months.getAsInt()));
  }

  private static Reason due(InspectionRule rule, ChargedCircuit circuit, int months) {
    Map<String, Object> facts = facts(rule, circuit);
    facts.put("months", months);
    return new Reason("leak-inspection", DUE, facts, rule.source());
  }

  private static InspectionDuty no(
      InspectionRule rule, ChargedCircuit circuit, String code, String template) {
    return new InspectionDuty(
        OptionalInt.empty(),
        rule.detectorMandatory(),
        () -> new Reason(code, template, facts(rule, circuit), rule.source()));
  }

  private static InspectionDuty none(
      List<InspectionRule> concerning, ChargedCircuit circuit, Source law) {
    Optional<InspectionRule> least =
        concerning.stream()
            .filter(rule -> !rule.exempts())
            .min(Comparator.comparing(InspectionRule::from));
    return least
        .map(rule -> no(rule, circuit, "charge-too-small", TOO_LITTLE))
        .orElseGet(
            () ->
                new InspectionDuty(
                    OptionalInt.empty(),
                    false,
                    () -> new Reason("no-leak-inspection", NO_RULE, facts(circuit), law)));
  }

  private static Map<String, Object> facts(InspectionRule rule, ChargedCircuit circuit) {
    Map<String, Object> facts = facts(circuit);
    facts.put("limit", rule.band());
    facts.put("reference", rule.legalReference());
    rule.months().ifPresent(months -> facts.put("months", months));
    return facts;
  }

  private static Map<String, Object> facts(ChargedCircuit circuit) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("charge", ExactMass.told(circuit.chargeKg()));
    facts.put("refrigerant", circuit.gas().designation());
    facts.put("category", circuit.category().replace('-', ' '));
    facts.put("jurisdiction", String.valueOf(circuit.jurisdiction()));
    facts.put("tonnes", circuit.tonnesCo2e().setScale(2, RoundingMode.HALF_UP).toPlainString());
    return facts;
  }
}
