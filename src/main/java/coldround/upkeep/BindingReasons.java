package coldround.upkeep;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reasons that a booking must not put off: scoring/binding-reasons.csv. */
final class BindingReasons {

  private static final String FILE = "binding-reasons.csv";

  /**
   * One of them.
   *
   * @param what safety or law
   */
  record Binding(String reason, String what, Source source) {}

  private final Map<String, Binding> byReason = new HashMap<>();

  private BindingReasons() {}

  static BindingReasons load(RuleTables tables) {
    BindingReasons reasons = new BindingReasons();
    tables
        .read(FILE, "reason", BindingReasons::binding)
        .forEach(binding -> reasons.byReason.put(binding.reason, binding));
    return reasons;
  }

  private static Binding binding(TableRow row) {
    return new Binding(
        row.required("reason"), row.oneOf("what", Set.of("safety", "law")), row.source());
  }

  Optional<Binding> find(String reason) {
    return Optional.ofNullable(byReason.get(reason));
  }
}
