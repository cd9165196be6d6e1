package coldround.refrigerant;

import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.table.RuleTables;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What follows from a leak rate in the United States: thresholds, repair time, yearly report. */
public final class LeakDuties {

  private static final String COUNTRY = "US";
  private static final String OVER =
      "The leak rate of {rate} ({method} method) is over the {threshold} % of {category}"
          + " ({reference}): find the leaks, repair them and verify the repair by {due}";
  private static final String WITHIN =
      "The leak rate of {rate} ({method} method) is not over the {threshold} % of {category}"
          + " ({reference})";
  private static final String NO_THRESHOLD =
      "No leak rate threshold of the tables holds for {charge} of {refrigerant} in {category},"
          + " jurisdiction '{jurisdiction}', on {date}; the rate still shows a repeated fault";
  private static final String CHRONIC =
      "{added} added in {year} is {limit} % or more of the full charge of {charge} ({reference}):"
          + " the owner reports it by {due}";

  private final List<LeakRule> rules;
  private final Jurisdictions jurisdictions;

  LeakDuties(List<LeakRule> rules, Jurisdictions jurisdictions) {
    this.rules = rules;
    this.jurisdictions = jurisdictions;
  }

  public static LeakDuties load(RuleTables tables) {
    return new LeakDuties(LeakRule.read(tables), Jurisdictions.load(tables));
  }

  /** Whether the rate is over the threshold of the circuit, and what is due when. */
  public LeakVerdict judge(LeakRate rate, ChargedCircuit circuit) {
    Optional<LeakRule> threshold = rule("threshold", circuit, rate.date());
    if (threshold.isEmpty()) {
      Reason none = noThreshold(rate, circuit);
      return new LeakVerdict(rate, Optional.empty(), false, Optional.empty(), with(rate, none));
    }
    LeakRule limit = threshold.get();
    boolean over = rate.over(limit.value());
    Optional<LeakRule> repair = rule("repair", circuit, rate.date()).filter(rule -> over);
    Optional<LocalDate> due = repair.map(rule -> rate.date().plusDays(rule.value().longValue()));
    Reason reason = compared(rate, circuit, limit, over, due);
    return new LeakVerdict(rate, Optional.of(limit.value()), over, due, with(rate, reason));
  }

  private static List<Reason> with(LeakRate rate, Reason reason) {
    List<Reason> reasons = new ArrayList<>();
    reasons.add(reason);
    reasons.addAll(rate.reasons());
    return reasons;
  }

  private static Reason compared(
      LeakRate rate,
      ChargedCircuit circuit,
      LeakRule limit,
      boolean over,
      Optional<LocalDate> due) {
    Map<String, Object> facts = facts(circuit);
    facts.put("rate", rate.told(limit.value()));
    facts.put("method", rate.method().code());
    facts.put("threshold", limit.value().stripTrailingZeros().toPlainString());
    facts.put("reference", limit.legalReference());
    facts.put("date", rate.date());
    facts.put("due", due.<Object>map(day -> day).orElse("the day the law sets"));
    return over
        ? new Reason("leak-rate-over", OVER, facts, limit.source())
        : new Reason("leak-rate-within", WITHIN, facts, limit.source());
  }

  private Reason noThreshold(LeakRate rate, ChargedCircuit circuit) {
    Map<String, Object> facts = facts(circuit);
    facts.put("date", rate.date());
    Source source = jurisdictions.law(circuit.jurisdiction()).source();
    return new Reason("no-leak-threshold", NO_THRESHOLD, facts, source);
  }

  private static Map<String, Object> facts(ChargedCircuit circuit) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("charge", ExactMass.told(circuit.chargeKg()));
    facts.put("refrigerant", circuit.gas().designation());
    facts.put("category", circuit.category().replace('-', ' '));
    facts.put("jurisdiction", String.valueOf(circuit.jurisdiction()));
    return facts;
  }

  /**
   * The report on a circuit that lost its charge and more within a calendar year, if one is due.
   */
  public Optional<Reason> chronic(List<GasAddition> additions, ChargedCircuit circuit, int year) {
    LocalDate last = LocalDate.of(year, 12, 31);
    BigDecimal added = LeakRates.sum(additions, LocalDate.of(year - 1, 12, 31), last);
    return rule("chronic", circuit, last)
        .filter(rule -> reaches(added, rule.value(), circuit.chargeKg()))
        .map(rule -> chronic(rule, circuit, added, year));
  }

  private static boolean reaches(BigDecimal added, BigDecimal percent, BigDecimal chargeKg) {
    return added.movePointRight(2).compareTo(percent.multiply(chargeKg)) >= 0;
  }

  private static Reason chronic(LeakRule rule, ChargedCircuit circuit, BigDecimal added, int year) {
    Map<String, Object> facts = facts(circuit);
    facts.put("added", ExactMass.told(added));
    facts.put("year", year);
    facts.put("limit", rule.value().stripTrailingZeros().toPlainString());
    facts.put("reference", rule.legalReference());
    facts.put("due", rule.due().atYear(year + 1));
    return new Reason("chronic-leak-report", CHRONIC, facts, rule.source());
  }

  /** The rule of a topic that holds for the circuit on that day. */
  private Optional<LeakRule> rule(String topic, ChargedCircuit circuit, LocalDate date) {
    if (!jurisdictions.law(circuit.jurisdiction()).schedules().contains(COUNTRY)) {
      return Optional.empty();
    }
    String group = LeakScope.group(circuit.gas());
    return inScope(circuit, group)
        ? rules.stream()
            .filter(rule -> rule.topic().equals(topic) && rule.gas().equals(group))
            .filter(rule -> rule.categories().contains(circuit.category()))
            .filter(rule -> !date.isBefore(rule.from()))
            .filter(rule -> rule.chargeFromKg() == null || enough(rule, circuit))
            .findFirst()
        : Optional.empty();
  }

  private static boolean enough(LeakRule rule, ChargedCircuit circuit) {
    return circuit.chargeKg().compareTo(rule.chargeFromKg()) >= 0;
  }

  private boolean inScope(ChargedCircuit circuit, String group) {
    BigDecimal gwp = BigDecimal.valueOf(circuit.gas().gwpAr4());
    return rules.stream()
        .filter(rule -> rule.topic().equals("scope") && rule.gas().equals(group))
        .anyMatch(rule -> rule.gwpAbove() == null || gwp.compareTo(rule.gwpAbove()) > 0);
  }
}
