package coldround.intake.edge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a caller prefers by RFC 7240: to be answered at once, or after so many seconds at the
 * latest. What is not understood is passed over, as that standard asks.
 *
 * @param async respond-async was asked for
 * @param waitSeconds how long the caller is ready to wait before
 */
record Preference(boolean async, int waitSeconds) {

  private static final int LONGEST_WAIT = 60;

  /**
   * @param headers every Prefer header
   */
  static Preference of(List<String> headers) {
    boolean async = false;
    int wait = 0;
    for (String preference : preferences(headers)) {
      if (preference.equals("respond-async")) {
        async = true;
      } else if (preference.matches("wait=\"?\\d{1,9}\"?")) {
        wait = Integer.parseInt(preference.replaceAll("\\D", ""));
      }
    }
    return new Preference(async, Math.min(wait, LONGEST_WAIT));
  }

  private static List<String> preferences(List<String> headers) {
    List<String> preferences = new ArrayList<>();
    for (String header : headers == null ? List.<String>of() : headers) {
      for (String preference : header.split(",")) {
        preferences.add(preference.split(";", 2)[0].replaceAll("\\s", "").toLowerCase(Locale.ROOT));
      }
    }
    return preferences;
  }

  /** As the header Preference-Applied tells it. */
  String applied() {
    return waitSeconds > 0 ? "respond-async, wait=" + waitSeconds : "respond-async";
  }
}
