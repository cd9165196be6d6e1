package coldround.access.edge;

import coldround.access.Account;
import coldround.access.AtOnce;
import coldround.access.Guesses;
import coldround.access.Pace;
import coldround.access.Secret;
import coldround.access.edge.Accounts.Found;
import coldround.http.Connections;
import coldround.http.Problem;
import io.quarkus.logging.Log;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Looks at tokens that are shown, slower and slower at those of somebody who guesses. */
@ApplicationScoped
class Doorkeeper {

  private final Accounts accounts;
  private final KnownSecrets known;
  private final Guesses guesses;
  private final Pace pace;
  private final AtOnce<RoutingContext> underWay;
  private final AtOnce<DearCall> dear;
  private final Clock clock;

  @Inject
  Doorkeeper(
      Accounts accounts,
      KnownSecrets known,
      Clock clock,
      @ConfigProperty(name = "coldround.rate.per-minute") int perMinute,
      @ConfigProperty(name = "coldround.rate.at-once") int atOnce,
      @ConfigProperty(name = "coldround.rate.dear-at-once") int dearAtOnce,
      @ConfigProperty(name = "coldround.guessing.free") int free,
      @ConfigProperty(name = "coldround.guessing.first-pause") Duration first,
      @ConfigProperty(name = "coldround.guessing.longest-pause") Duration longest,
      @ConfigProperty(name = "coldround.guessing.forgotten-after") Duration forgotten) {
    this.accounts = accounts;
    this.known = known;
    this.clock = clock;
    this.pace = new Pace(perMinute);
    this.underWay = new AtOnce<>(atOnce, Connections::isGone);
    this.dear = new AtOnce<>(dearAtOnce, DearCall::isOver);
    this.guesses = new Guesses(new Guesses.Limits(free, first, longest, forgotten));
  }

  /** Without reading the store. */
  Optional<Account> seenLately(boolean session, Secret secret) {
    return known.find(session, secret);
  }

  /** How long the shown token is not even looked at. */
  Optional<Duration> pause(String address, Secret token) {
    return guesses.pause(address, token, clock.instant());
  }

  /** Reads the store; a token that nobody has counts as a guess. */
  Found look(String address, Secret token) {
    Found found = accounts.byToken(token);
    if (found.account() != null) {
      guesses.right(address, token);
    } else if (found.ended().isEmpty()) {
      guesses.wrong(address, token, clock.instant());
      Log.warnf("a token that nobody has was shown from %s", address);
    } else {
      Log.infof("a token that is %s was shown from %s", found.ended(), address);
    }
    return found;
  }

  Found lookAtSession(Secret key) {
    return accounts.bySession(key);
  }

  /** Refuses a call of an account that makes too many, one after the other or at once. */
  Optional<Problem> tooMany(Account account, RoutingContext call) {
    Optional<Duration> pause = pace.call(account.id(), clock.instant());
    if (pause.isPresent()) {
      return Optional.of(
          tooMany("This account calls more often than it may.", seconds(pause.get())));
    }
    if (!underWay.enter(account.id(), call)) {
      return Optional.of(tooMany("Too many calls of this account are under way.", 1));
    }
    call.addEndHandler(ended -> underWay.leave(account.id(), call));
    return Optional.empty();
  }

  /** Refuses a call that costs much where the account has some of those under way. */
  Optional<Problem> tooDear(Account account, DearCall call) {
    if (!dear.enter(account.id(), call)) {
      return Optional.of(
          tooMany(
              "As many calls of this account as may be that cost much are under way: plans, trials,"
                  + " backtests, exports. Naming a customer makes them shorter.",
              1));
    }
    call.whenOver(() -> dear.leave(account.id(), call));
    return Optional.empty();
  }

  private static Problem tooMany(String says, long seconds) {
    return new Problem(
            429, "too-many-calls", "Too many calls", says + " Wait before the next.", List.of())
        .with("Retry-After", String.valueOf(seconds));
  }

  static long seconds(Duration pause) {
    return pause.plusMillis(999).toSeconds();
  }

  static Problem wait(Duration pause) {
    long seconds = seconds(pause);
    return new Problem(
            429,
            "too-many-guesses",
            "Too many tokens that nobody has",
            "Wait " + seconds + " s, then show the right one.",
            List.of())
        .with("Retry-After", String.valueOf(seconds));
  }
}
