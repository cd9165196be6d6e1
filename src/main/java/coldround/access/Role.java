package coldround.access;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What an account may do. */
public enum Role {
  /** Everything. */
  PLANNER,
  /** Own rounds, and visits at their sites. */
  TECHNICIAN,
  /** Reads the own fleet, its tasks and the plans made for it. */
  CUSTOMER,
  /** A scheduling system: reads the feed and the tasks, answers bookings and completions. */
  SCHEDULER;

  /** Codes, for annotations. */
  public static final String PLANNER_CODE = "planner";

  public static final String TECHNICIAN_CODE = "technician";
  public static final String CUSTOMER_CODE = "customer";
  public static final String SCHEDULER_CODE = "scheduler";

  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Role of(String code) {
    return valueOf(code.toUpperCase(Locale.ROOT));
  }

  /** Empty for a code that is none. */
  public static Optional<Role> find(String code) {
    return Arrays.stream(values()).filter(role -> role.code().equals(code)).findFirst();
  }
}
