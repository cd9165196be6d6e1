package coldround.refrigerant;

import coldround.reason.Source;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One dated rule of law about refrigerants: a row of scoring/phase-out.csv.
 *
 * @param id key of the row
 * @param schedule whose law it is, such as US, US-California, EU or Kigali non-Article 5; * for all
 * @param effect what it does
 * @param families families concerned; none for all
 * @param contains only gases that hold one of these; none for no such limit
 * @param gases only these designations; none for no such limit
 * @param gwpFrom only gases of this GWP or more
 * @param gwpAbove only gases above this GWP
 * @param kinds kinds of unit, or groups of kinds, concerned; none for all
 * @param from first day, null where none is known
 * @param until last day, null for no end
 * @param sharePercent for effects that limit supply: percent of the baseline that is left
 * @param decides yes; no for a row kept for the record; assumed where its figures were not read
 * @param trust read, partly, memory or assumed: how far the row was checked
 * @param scope equipment concerned, in words
 * @param status state of the rule, in words
 * @param source the row with its legal reference, and how far it was checked
 */
public record PhaseOutRule(
    String id,
    String schedule,
    Effect effect,
    List<String> families,
    List<String> contains,
    List<String> gases,
    OptionalDouble gwpFrom,
    OptionalDouble gwpAbove,
    List<String> kinds,
    LocalDate from,
    LocalDate until,
    OptionalDouble sharePercent,
    String decides,
    String trust,
    String scope,
    String status,
    String legalReference,
    String note,
    Source source) {

  /** What a rule does; the code is that of the table. */
  public enum Effect {
    PRODUCTION_IMPORT("production-import", true),
    QUOTA_STEP("quota-step", true),
    SERVICING_VIRGIN("servicing-virgin", true),
    SALE_VIRGIN("sale-virgin", true),
    SERVICING_RECLAIMED("servicing-reclaimed", false),
    NEW_EQUIPMENT("new-equipment", false),
    SERVICE_ALLOWED("service-allowed", false),
    NO_PHASE_OUT("no-phase-out", false),
    INFORMATION("information", false);

    private final String code;
    private final boolean limitsNewGas;

    Effect(String code, boolean limitsNewGas) {
      this.code = code;
      this.limitsNewGas = limitsNewGas;
    }

    public String code() {
      return code;
    }

    /** True when the rule leaves a share of new gas. */
    boolean limitsNewGas() {
      return limitsNewGas;
    }

    /** True for a limit of what may be made and imported at all. */
    boolean isProductionStep() {
      return this == PRODUCTION_IMPORT || this == QUOTA_STEP;
    }

    /** True for a rule without meaning until its first day. */
    boolean needsDate() {
      return limitsNewGas || this == SERVICING_RECLAIMED || this == NEW_EQUIPMENT;
    }
  }

  /**
   * @throws IllegalArgumentException when the dates or the share do not fit the effect
   */
  public PhaseOutRule {
    families = List.copyOf(families);
    contains = List.copyOf(contains);
    gases = List.copyOf(gases);
    kinds = List.copyOf(kinds);
    if (effect.needsDate() && from == null) {
      throw new IllegalArgumentException("effect " + effect.code() + " needs the date in from");
    }
    if (effect.limitsNewGas() != sharePercent.isPresent()) {
      throw new IllegalArgumentException(
          "share_percent belongs to effects that limit new gas, and to each of them");
    }
    if (from != null && until != null && until.isBefore(from)) {
      throw new IllegalArgumentException("ends on " + until + ", before it starts on " + from);
    }
  }

  /** True when the rule speaks of that gas, whatever the date and the equipment. */
  public boolean concerns(Refrigerant gas) {
    return (families.isEmpty() || families.contains(gas.family()))
        && (contains.isEmpty() || contains.stream().anyMatch(gas::contains))
        && (gases.isEmpty() || gases.contains(gas.designation()))
        && (gwpFrom.isEmpty() || gas.gwpAr4() >= gwpFrom.getAsDouble())
        && (gwpAbove.isEmpty() || gas.gwpAr4() > gwpAbove.getAsDouble());
  }

  public boolean inForce(LocalDate date) {
    return (from == null || !date.isBefore(from)) && (until == null || !date.isAfter(until));
  }

  /** True when some day from the first to the last given lies within the rule. */
  boolean touches(LocalDate first, LocalDate last) {
    return (from == null || !last.isBefore(from)) && (until == null || !first.isAfter(until));
  }

  boolean decidesAnything() {
    return !decides.equals("no");
  }

  /** The GWP at which the rule begins to bite, for its sentence. */
  public OptionalInt gwpLimit() {
    OptionalDouble limit = gwpFrom.isPresent() ? gwpFrom : gwpAbove;
    return limit.isPresent() ? OptionalInt.of((int) limit.getAsDouble()) : OptionalInt.empty();
  }
}
