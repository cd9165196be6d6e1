package coldround.access;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * How many calls an account may make: so many a minute, of which it may save up those of a minute.
 * Counted in memory.
 */
public final class Pace {

  private static final double SECONDS = 60;

  private record Left(double calls, Instant at) {}

  private final double perMinute;
  private final Map<String, Left> accounts = new ConcurrentHashMap<>();

  /**
   * @param perMinute 0 for no limit
   */
  public Pace(double perMinute) {
    this.perMinute = perMinute;
  }

  /** Counts a call. Empty where it may be made; else how long to wait for the next. */
  public Optional<Duration> call(String account, Instant now) {
    if (perMinute <= 0) {
      return Optional.empty();
    }
    Left left =
        accounts.merge(account, new Left(perMinute - 1, now), (old, fresh) -> less(old, now));
    if (left.calls >= 0) {
      return Optional.empty();
    }
    // less than half a millisecond is a wait too
    long millis = Math.round(-left.calls * SECONDS * 1000 / perMinute);
    return Optional.of(Duration.ofMillis(Math.max(1, millis)));
  }

  /** A refused call costs nothing, so that who keeps trying gets in again as soon as others. */
  private Left less(Left old, Instant now) {
    double grown = Duration.between(old.at, now).toNanos() / 1e9 * perMinute / SECONDS;
    double kept = old.calls < 0 ? old.calls + 1 : old.calls;
    double had = Math.min(perMinute, kept + grown);
    return new Left(had - 1, now);
  }
}
