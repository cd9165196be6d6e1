package coldround.http;

import java.io.IOException;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Faults that lie in the database or the disk, not in the call or the program: they pass, and the
 * same call can be sent again.
 */
public final class StoreFaults {

  private static final String RETRY_S = "5";

  // of the operating system: no space, above the quota, above the limit of a file
  private static final Pattern NO_ROOM =
      Pattern.compile("No space left on device|quota exceeded|File too large|not enough space");

  /** SQLSTATE of PostgreSQL for a full disk (its manual, appendix A). */
  private static final String DISK_FULL = "53100";

  /**
   * SQLSTATE: 08 connections (ISO 9075), 57P the server stops or starts, 53 it lacks means
   * (PostgreSQL, appendix A), 90xxx of H2: 90028, 90031 and 90030 its file, 90020 another has it
   * open, 90098 and 90121 it was closed, 90067 the connection is broken.
   */
  private static final Pattern AWAY =
      Pattern.compile("08...|57P0.|53...|90020|90028|90030|90031|90067|90098|90121");

  /**
   * SQLSTATE: 40001 and 40P01 two that wait for each other, 55P03 (PostgreSQL) and HYT00 (H2) a row
   * that another did not let go of in time.
   */
  private static final Set<String> BUSY = Set.of("40001", "40P01", "55P03", "HYT00");

  private StoreFaults() {}

  /** What to answer where the fault is that others were writing the same: 503. */
  public static Optional<Problem> busy(Throwable fault) {
    boolean busy =
        any(fault, each -> each instanceof SQLException sql && BUSY.contains(state(sql)));
    return busy ? Optional.of(othersWrite()) : Optional.empty();
  }

  static Problem othersWrite() {
    return new Problem(
            503, "busy", "Others write the same at this time", "Send it again.", List.of())
        .with("Retry-After", "1");
  }

  private static String state(SQLException fault) {
    return String.valueOf(fault.getSQLState());
  }

  /** What to answer where the fault, or what caused it, is one of these: 503, or 507. */
  public static Optional<Problem> of(Throwable fault) {
    if (any(fault, StoreFaults::isFull)) {
      return Optional.of(
          new Problem(
                  507,
                  "no-room",
                  "The disk has no room for this",
                  "Nothing of this call was kept, or its end is not known. Make room on the disk of"
                      + " the service or of its database, then send it again.",
                  List.of())
              .with("Retry-After", RETRY_S));
    }
    if (any(fault, StoreFaults::isAway)) {
      return Optional.of(
          new Problem(
                  503,
                  "store-away",
                  "The database does not answer",
                  "What was asked was not done, or its end is not known. Send it again after the"
                      + " time of Retry-After.",
                  List.of())
              .with("Retry-After", RETRY_S));
    }
    return Optional.empty();
  }

  private static boolean isFull(Throwable fault) {
    String says = String.valueOf(fault.getMessage());
    return fault instanceof IOException && NO_ROOM.matcher(says).find()
        || fault instanceof SQLException sql && DISK_FULL.equals(sql.getSQLState());
  }

  /** The pool tells that it got no connection by an exception without a state. */
  private static boolean isAway(Throwable fault) {
    return fault instanceof SQLException sql
        && (sql.getSQLState() == null || AWAY.matcher(sql.getSQLState()).matches());
  }

  /** Causes, and what was suppressed: a commit that fails hides its reason there. */
  private static boolean any(Throwable fault, Predicate<Throwable> kind) {
    Set<Throwable> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<Throwable> open = new ArrayDeque<>(List.of(fault));
    while (!open.isEmpty()) {
      Throwable one = open.pop();
      if (seen.add(one)) {
        if (kind.test(one)) {
          return true;
        }
        Optional.ofNullable(one.getCause()).ifPresent(open::push);
        List.of(one.getSuppressed()).forEach(open::push);
        if (one instanceof SQLException sql && sql.getNextException() != null) {
          open.push(sql.getNextException());
        }
      }
    }
    return false;
  }
}
