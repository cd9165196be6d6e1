package coldround.access;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Makes guessing of tokens slow: whoever shows one that nobody has, from the same address or with
 * the same beginning, has to wait longer each time. A token that has opened something from an
 * address before is no guess there and passes. Kept in memory, of at most so many places.
 */
public final class Guesses {

  private static final int MOST = 10_000;

  /**
   * @param free wrong ones that cost no pause
   * @param first pause after that, doubled with every further one
   * @param longest pause
   * @param forgotten after so long without a wrong one
   */
  public record Limits(int free, Duration first, Duration longest, Duration forgotten) {}

  private record Count(int wrong, Instant last) {}

  private final Limits limits;
  private final Map<String, Count> counts = new Latest<>();
  private final Map<String, Boolean> passed = new Latest<>();

  public Guesses(Limits limits) {
    this.limits = limits;
  }

  /** How long whoever shows this secret still has to wait; empty where it may be looked at. */
  public synchronized Optional<Duration> pause(String address, Secret secret, Instant now) {
    if (passed.containsKey(place(address, secret))) {
      return Optional.empty();
    }
    Duration byAddress = left(counts.get(byAddress(address)), now);
    Duration byPrefix = left(counts.get(byPrefix(secret)), now);
    Duration longer = byAddress.compareTo(byPrefix) > 0 ? byAddress : byPrefix;
    return longer.isZero() ? Optional.empty() : Optional.of(longer);
  }

  private Duration left(Count count, Instant now) {
    if (count == null || count.wrong <= limits.free) {
      return Duration.ZERO;
    }
    int doublings = Math.min(30, count.wrong - limits.free - 1);
    Duration pause = limits.first.multipliedBy(1L << doublings);
    if (pause.compareTo(limits.longest) > 0) {
      pause = limits.longest;
    }
    Duration left = Duration.between(now, count.last.plus(pause));
    return left.isNegative() ? Duration.ZERO : left;
  }

  /** Nobody has this secret. */
  public synchronized void wrong(String address, Secret secret, Instant now) {
    count(byAddress(address), now);
    count(byPrefix(secret), now);
  }

  private void count(String place, Instant now) {
    Count before = counts.get(place);
    boolean fresh = before == null || before.last.plus(limits.forgotten).isBefore(now);
    counts.put(place, new Count(fresh ? 1 : before.wrong + 1, now));
  }

  /** The secret has opened something from there. */
  public synchronized void right(String address, Secret secret) {
    passed.put(place(address, secret), true);
  }

  private static String byAddress(String address) {
    return "address " + address;
  }

  private static String byPrefix(Secret secret) {
    return "prefix " + secret.prefix();
  }

  private static String place(String address, Secret secret) {
    return address + ' ' + secret.hash();
  }

  /** The latest that were met. */
  private static final class Latest<T> extends LinkedHashMap<String, T> {
    private static final long serialVersionUID = 1L;

    Latest() {
      super(64, 0.75f, true);
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, T> eldest) {
      return size() > MOST;
    }
  }
}
