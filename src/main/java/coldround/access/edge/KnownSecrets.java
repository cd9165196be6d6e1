package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Secret;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Tokens and session keys that were looked up a moment ago, so that most calls cost no read. Only
 * what was found is kept, by its hash, for seconds.
 */
@ApplicationScoped
class KnownSecrets {

  private static final int MOST = 10_000;

  private record Kept(Account account, Instant until) {}

  private final Clock clock;
  private final Duration life;
  private final Map<String, Kept> kept = new ConcurrentHashMap<>();
  private final AtomicLong generation = new AtomicLong();

  @Inject
  KnownSecrets(Clock clock, @ConfigProperty(name = "coldround.access.believed-for") Duration life) {
    this.clock = clock;
    this.life = life;
  }

  Optional<Account> find(boolean session, Secret secret) {
    Kept known = kept.get(key(session, secret));
    return known != null && clock.instant().isBefore(known.until())
        ? Optional.of(known.account())
        : Optional.empty();
  }

  /** To be asked for before the store is read: what was read before a change is not kept. */
  long generation() {
    return generation.get();
  }

  /**
   * @param expires when it ends by itself; null for never
   */
  void keep(boolean session, Secret secret, Account account, Instant expires, long read) {
    if (kept.size() >= MOST) {
      kept.clear();
    }
    Instant until = clock.instant().plus(life);
    Kept fresh = new Kept(account, expires != null && expires.isBefore(until) ? expires : until);
    String key = key(session, secret);
    kept.put(key, fresh);
    if (read != generation.get()) {
      kept.remove(key, fresh);
    }
  }

  /** After every change of accounts or sessions: it holds here at once. */
  void forget() {
    generation.incrementAndGet();
    kept.clear();
  }

  private static String key(boolean session, Secret secret) {
    return (session ? "session " : "token ") + secret.hash();
  }
}
