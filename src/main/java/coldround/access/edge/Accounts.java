package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Audit;
import coldround.access.Role;
import coldround.access.Secret;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Who a token or a page session belongs to. */
@ApplicationScoped
class Accounts {

  /** The account that the first start makes. */
  static final String FIRST = "planner";

  private static final Duration USE_WRITTEN = Duration.ofMinutes(1);

  /**
   * What a secret is worth.
   *
   * @param account null where it opens nothing
   * @param ended revoked or expired; empty where it counts, and where it never did
   */
  record Found(Account account, String ended) {
    static final Found NOTHING = new Found(null, "");

    Optional<Account> opens() {
      return Optional.ofNullable(account);
    }
  }

  private final Clock clock;
  private final KnownSecrets known;
  private final Audit audit;
  private final Duration sessionLasts;

  @Inject
  Accounts(
      Clock clock,
      KnownSecrets known,
      Audit audit,
      @ConfigProperty(name = "coldround.session", defaultValue = "P30D") Duration sessionLasts) {
    this.clock = clock;
    this.known = known;
    this.audit = audit;
    this.sessionLasts = sessionLasts;
  }

  @Transactional
  Found byToken(Secret token) {
    long read = known.generation();
    Optional<AccountRow> row =
        AccountRow.<AccountRow>find("tokenHash", token.hash()).firstResultOptional();
    return row.map(its -> found(its, token, false, its.expires, read)).orElse(Found.NOTHING);
  }

  @Transactional
  Found bySession(Secret key) {
    long read = known.generation();
    PageSessionRow session = PageSessionRow.findById(key.hash());
    if (session == null || !clock.instant().isBefore(session.expires)) {
      return Found.NOTHING;
    }
    AccountRow row = AccountRow.findById(session.accountId);
    boolean accountFirst = row.expires != null && row.expires.isBefore(session.expires);
    return found(row, key, true, accountFirst ? row.expires : session.expires, read);
  }

  private Found found(AccountRow row, Secret secret, boolean session, Instant until, long read) {
    Found found = found(row);
    found.opens().ifPresent(account -> known.keep(session, secret, account, until, read));
    return found;
  }

  private Found found(AccountRow row) {
    Instant now = clock.instant();
    String ended = row.ended(now);
    if (!ended.isEmpty()) {
      return new Found(null, ended);
    }
    if (row.lastUsed == null || row.lastUsed.isBefore(now.minus(USE_WRITTEN))) {
      // not through the entity: two calls at once would get into each other's way
      AccountRow.update(
          "lastUsed = ?1 where id = ?2 and (lastUsed is null or lastUsed < ?3)",
          now,
          row.id,
          now.minus(USE_WRITTEN));
    }
    return new Found(row.read(), "");
  }

  /** The account of a person as a provider of log-ins calls them, in whatever case. */
  @Transactional
  Found byLogin(String login) {
    List<AccountRow> rows =
        AccountRow.list("lower(login) = ?1", login.strip().toLowerCase(Locale.ROOT));
    return rows.size() == 1 ? found(rows.get(0)) : Found.NOTHING;
  }

  /** A page session for the account, until it leaves or the time is over. */
  @Transactional
  Secret enter(Account account, Duration lasts) {
    Instant now = clock.instant();
    PageSessionRow.delete("expires < ?1", now);
    Secret key = Secret.random();
    PageSessionRow session = new PageSessionRow();
    session.hash = key.hash();
    session.accountId = account.id();
    session.expires = now.plus(lasts);
    session.persist();
    return key;
  }

  void leave(Secret key) {
    end(key);
    known.forget();
  }

  @Transactional
  void end(Secret key) {
    PageSessionRow.deleteById(key.hash());
  }

  Duration sessionLasts() {
    return sessionLasts;
  }

  /**
   * Sees to it that there is a planner.
   *
   * @param given token the operator wants it to have; null to make one up at the first start
   * @return the token made up, when one was
   */
  @Transactional
  Optional<Secret> seeToPlanner(Secret given) {
    AccountRow first = AccountRow.findById(FIRST);
    if (first != null && given == null) {
      return Optional.empty();
    }
    Secret token = given != null ? given : Secret.random();
    AccountRow row = first != null ? first : newPlanner();
    if (!token.hash().equals(row.tokenHash) || !row.ended(clock.instant()).isEmpty()) {
      String what = given == null ? "a token of its own" : "the token that is set";
      audit.note(Audit.Change.of("account", FIRST, "token set at start", "", what));
    }
    row.token(token, null);
    row.persist();
    return given == null ? Optional.of(token) : Optional.empty();
  }

  private AccountRow newPlanner() {
    AccountRow row = new AccountRow();
    row.id = FIRST;
    row.name = "Planner";
    row.role = Role.PLANNER.code();
    row.customer = "";
    row.technician = "";
    row.created = clock.instant();
    return row;
  }
}
