package coldround.access;

import java.util.Locale;

/** What an account may do. */
public enum Role {
  /** Everything. */
  PLANNER;

  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Role of(String code) {
    return valueOf(code.toUpperCase(Locale.ROOT));
  }
}
