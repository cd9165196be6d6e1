package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Role;
import coldround.access.Secret;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Who a token or a page session belongs to. */
@ApplicationScoped
class Accounts {

  /** The account that the first start makes. */
  static final String FIRST = "planner";

  private final Clock clock;
  private final Duration sessionLasts;

  @Inject
  Accounts(
      Clock clock,
      @ConfigProperty(name = "coldround.session", defaultValue = "P30D") Duration sessionLasts) {
    this.clock = clock;
    this.sessionLasts = sessionLasts;
  }

  @Transactional
  Optional<Account> byToken(Secret token) {
    return AccountRow.<AccountRow>find("tokenHash", token.hash())
        .firstResultOptional()
        .map(AccountRow::read);
  }

  @Transactional
  Optional<Account> bySession(Secret key) {
    PageSessionRow session = PageSessionRow.findById(key.hash());
    if (session == null || session.expires.isBefore(clock.instant())) {
      return Optional.empty();
    }
    return AccountRow.<AccountRow>findByIdOptional(session.accountId).map(AccountRow::read);
  }

  /** Begins a page session for the owner of the token. */
  @Transactional
  Optional<Secret> enter(Secret token) {
    return byToken(token).map(account -> begin(account, clock.instant()));
  }

  private Secret begin(Account account, Instant now) {
    PageSessionRow.delete("expires < ?1", now);
    Secret key = Secret.random();
    PageSessionRow session = new PageSessionRow();
    session.hash = key.hash();
    session.accountId = account.id();
    session.expires = now.plus(sessionLasts);
    session.persist();
    return key;
  }

  @Transactional
  void leave(Secret key) {
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
    row.token(token);
    row.persist();
    return given == null ? Optional.of(token) : Optional.empty();
  }

  private AccountRow newPlanner() {
    AccountRow row = new AccountRow();
    row.id = FIRST;
    row.name = "Planner";
    row.role = Role.PLANNER.code();
    row.created = clock.instant();
    return row;
  }
}
