package coldround.pages;

import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Codes and column names as a person says them. */
public final class Words {

  // only where taking the hyphens out does not give what the trade writes
  private static final Map<String, String> SAID =
      Map.ofEntries(
          Map.entry("high_cutout", "high cut-out"),
          Map.entry("low_cutout", "low cut-out"),
          Map.entry("walk-in-cooler", "walk-in cooler"),
          Map.entry("walk-in-freezer", "walk-in freezer"),
          Map.entry("reach-in-cooler", "reach-in cooler"),
          Map.entry("reach-in-freezer", "reach-in freezer"),
          Map.entry("high-head-lockout", "high-head lockout"),
          Map.entry("cut-out-reset", "cut-out reset"),
          Map.entry("head_control", "head pressure control"),
          Map.entry("voltage_l1_l2", "voltage L1-L2"),
          Map.entry("voltage_l2_l3", "voltage L2-L3"),
          Map.entry("voltage_l1_l3", "voltage L1-L3"),
          Map.entry("compressor_rated", "compressor, rated"),
          Map.entry("condenser_fan_rated", "condenser fan, rated"),
          Map.entry("evaporator_fan_rated", "evaporator fan, rated"),
          Map.entry("supply", "supply voltage"),
          Map.entry("compressor-no-start", "compressor does not start"),
          Map.entry("low-pressure-trip", "low-pressure trip"),
          Map.entry("follow-up-inspection", "follow-up inspection"),
          Map.entry("expectedHead", "expected head pressure"),
          Map.entry("splitAboveClean", "split above clean split"));

  private Words() {}

  /** "condenser-coil-cleaning", "head_pressure" or "tripAmbient" as "trip ambient". */
  public static String of(String code) {
    String said = SAID.get(code);
    return said != null ? said : spaced(code);
  }

  private static String spaced(String code) {
    return code.replaceAll("([a-z])([A-Z])", "$1 $2")
        .replaceAll("[-_]+", " ")
        .toLowerCase(Locale.ROOT);
  }

  /** The same as the beginning of a line: "Trip ambient". */
  public static String title(String code) {
    String words = of(code);
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Several of them: "inspected, drain cleared". */
  public static String list(Collection<String> codes) {
    return codes.stream().map(Words::of).collect(Collectors.joining(", "));
  }

  /** "1 unit", "90 units". */
  public static String count(long number, String one, String many) {
    return String.format(Locale.ENGLISH, "%,d %s", number, number == 1 ? one : many);
  }
}
