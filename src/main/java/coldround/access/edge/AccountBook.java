package coldround.access.edge;

import coldround.access.Audit;
import coldround.access.Audit.Change;
import coldround.access.Role;
import coldround.access.Secret;
import coldround.fleet.Fleet;
import coldround.http.Preconditions;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Makes accounts, gives them new tokens and takes tokens away. */
@ApplicationScoped
class AccountBook {

  private final Fleet fleet;
  private final KnownSecrets known;
  private final Audit audit;
  private final Clock clock;
  private final Duration lasts;

  @Inject
  AccountBook(
      Fleet fleet,
      KnownSecrets known,
      Audit audit,
      Clock clock,
      @ConfigProperty(name = "coldround.access.token-lasts") Duration lasts) {
    this.fleet = fleet;
    this.known = known;
    this.audit = audit;
    this.clock = clock;
    this.lasts = lasts;
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }

  /** The newest first. */
  @Transactional
  List<AccountView> list(String after, int limit) {
    List<AccountRow> rows =
        after.isEmpty()
            ? AccountRow.find("order by created desc, id").page(0, limit).list()
            : following(find(after), limit);
    return rows.stream().map(row -> AccountView.of(row, now(), null)).toList();
  }

  private static List<AccountRow> following(AccountRow last, int limit) {
    return AccountRow.find(
            "created < ?1 or created = ?1 and id > ?2 order by created desc, id",
            last.created,
            last.id)
        .page(0, limit)
        .list();
  }

  @Transactional
  AccountView read(String id) {
    return AccountView.of(find(id), now(), null);
  }

  private static AccountRow find(String id) {
    return AccountRow.<AccountRow>findByIdOptional(id)
        .orElseThrow(() -> Problem.notFound("account '" + id + "'"));
  }

  private static AccountRow locked(String id) {
    return AccountRow.<AccountRow>findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
        .orElseThrow(() -> Problem.notFound("account '" + id + "'"));
  }

  private AccountRow locked(String id, String seen) {
    AccountRow row = locked(id);
    String mark = AccountView.of(row, now(), null).mark();
    String shown = seen == null ? null : '"' + seen + '"';
    Preconditions.check(shown, null, mark, null);
    return row;
  }

  /** With the token, told this once. */
  @Transactional
  AccountView make(AccountBody asked) {
    AccountChecks checks = new AccountChecks(fleet, now(), lasts);
    AccountRow row = new AccountRow();
    row.id = UUID.randomUUID().toString();
    row.name = checks.name(asked.name());
    row.role = checks.role(asked);
    row.customer = AccountChecks.text(asked.customer());
    row.technician = AccountChecks.text(asked.technician());
    row.created = now();
    row.login = checks.login(asked.login(), "");
    Instant expires = checks.expires(asked.expires());
    checks.refuse();
    Secret token = Secret.random();
    row.token(token, expires);
    row.persist();
    note(row, "made", "");
    return AccountView.of(row, now(), token.text());
  }

  private void note(AccountRow row, String action, String was) {
    audit.note(new Change("account", row.id, action, row.customer, was, brief(row)));
  }

  private String brief(AccountRow row) {
    String ended = row.ended(now());
    return "%s, %s%s%s, %s, token %s…, %s%s"
        .formatted(
            row.name,
            row.role,
            row.customer.isEmpty() ? "" : " of " + row.customer,
            row.technician.isEmpty() ? "" : " " + row.technician,
            ended.isEmpty() ? "valid" : ended,
            row.tokenPrefix,
            row.expires == null ? "without an end" : "until " + row.expires,
            row.login == null ? "" : ", logs in as " + row.login);
  }

  /**
   * A new token in the place of the old, which ends with all its sessions; told this once.
   *
   * @param seen mark of the account as the caller has seen it; null for one who has not looked
   */
  AccountView renew(String id, AccountBody.Renewal asked, String seen) {
    AccountView renewed = renewed(id, asked, seen);
    known.forget();
    return renewed;
  }

  @Transactional
  AccountView renewed(String id, AccountBody.Renewal asked, String seen) {
    AccountRow row = locked(id, seen);
    AccountChecks checks = new AccountChecks(fleet, now(), lasts);
    Instant expires = checks.expires(asked.expires());
    checks.refuse();
    Secret token = Secret.random();
    String was = brief(row);
    row.token(token, expires);
    note(row, "renewed", was);
    PageSessionRow.delete("accountId", id);
    return AccountView.of(row, now(), token.text());
  }

  /**
   * How the person logs in at a provider; what was open by the old way is not any more.
   *
   * @param seen mark of the account as the caller has seen it; null for one who has not looked
   */
  AccountView login(String id, AccountBody.Login asked, String seen) {
    AccountView changed = changed(id, asked, seen);
    known.forget();
    return changed;
  }

  @Transactional
  AccountView changed(String id, AccountBody.Login asked, String seen) {
    AccountRow row = locked(id, seen);
    AccountChecks checks = new AccountChecks(fleet, now(), lasts);
    String login = checks.login(asked.login(), id);
    checks.refuse();
    if (!Objects.equals(login, row.login)) {
      String was = brief(row);
      row.login = login;
      note(row, "log-in changed", was);
      PageSessionRow.delete("accountId", id);
    }
    return AccountView.of(row, now(), null);
  }

  /** Its token and sessions count no more. */
  AccountView revoke(String id) {
    AccountView revoked = revoked(id);
    known.forget();
    return revoked;
  }

  @Transactional
  AccountView revoked(String id) {
    // one after the other, so that the last two planners do not revoke each other
    List<AccountRow> planners =
        AccountRow.<AccountRow>find("role = ?1 order by id", Role.PLANNER.code())
            .withLock(LockModeType.PESSIMISTIC_WRITE)
            .list();
    AccountRow row = locked(id);
    if (row.revoked != null) {
      return AccountView.of(row, now(), null);
    }
    boolean another =
        planners.stream().anyMatch(its -> !its.id.equals(id) && its.ended(now()).isEmpty());
    if (row.role.equals(Role.PLANNER.code()) && !another) {
      throw Problem.conflict("This is the last planner; make another before it goes.");
    }
    String was = brief(row);
    row.revoked = now();
    note(row, "revoked", was);
    PageSessionRow.delete("accountId", id);
    return AccountView.of(row, now(), null);
  }
}
