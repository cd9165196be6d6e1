package coldround.fleet;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The kinds of list that can be read in. */
public enum Kind {
  CUSTOMERS,
  SITES,
  UNITS,
  VISITS,
  READINGS,
  FAULTS,
  TECHNICIANS,
  TRAVEL_TIMES;

  /** As in addresses and file names: "travel-times". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Kind> find(String code) {
    return Arrays.stream(values()).filter(kind -> kind.code().equals(code)).findFirst();
  }
}
