package coldround.refrigerant;

import java.util.Arrays;
import java.util.Optional;

/**
 * The two ways of 40 CFR 82.152 and 84.102 to compute a leak rate. They can disagree on the same
 * additions; a facility keeps to one.
 */
public enum LeakMethod {
  ANNUALIZING("annualizing"),
  ROLLING_AVERAGE("rolling-average");

  private final String code;

  LeakMethod(String code) {
    this.code = code;
  }

  public String code() {
    return code;
  }

  public static Optional<LeakMethod> find(String code) {
    return Arrays.stream(values()).filter(method -> method.code.equals(code)).findFirst();
  }
}
