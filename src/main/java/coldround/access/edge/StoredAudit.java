package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Audit;
import coldround.fleet.UnitNames.UnitName;
import coldround.fleet.UnitOwners;
import coldround.http.Caller;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;

/** The book of changes in the store. It can be added to and read, and nothing else. */
@ApplicationScoped
class StoredAudit implements Audit {

  private static final int LONGEST = 1000;
  private static final int LONGEST_ID = 400;

  private final EntityManager entities;
  private final UnitOwners units;
  private final Caller caller;
  private final Clock clock;

  @Inject
  StoredAudit(EntityManager entities, UnitOwners units, Caller caller, Clock clock) {
    this.entities = entities;
    this.units = units;
    this.caller = caller;
    this.clock = clock;
  }

  @Override
  @Transactional(Transactional.TxType.MANDATORY)
  public void note(Change change) {
    Account account = caller.account() == null ? Account.SERVICE : caller.account();
    AuditRow row = new AuditRow();
    row.moment = clock.instant();
    row.accountId = account.id();
    row.accountName = account.name();
    row.callId = caller.call();
    row.kind = change.kind();
    row.objectId = cut(change.id(), LONGEST_ID);
    row.action = change.action();
    row.customer = change.customer();
    row.was = cut(change.was(), LONGEST);
    row.became = cut(change.became(), LONGEST);
    entities.persist(row);
  }

  @Override
  @Transactional(Transactional.TxType.MANDATORY)
  public void noteOfUnit(
      String unitId, String kind, String id, String action, String was, String became) {
    String customer = units.of(unitId).map(UnitName::customer).orElse("");
    note(new Change(kind, id, action, customer, was, became));
  }

  private static String cut(String text, int longest) {
    return text.length() <= longest ? text : text.substring(0, longest - 1) + "…";
  }

  /**
   * The newest first.
   *
   * @param before id behind which to go on; null for the beginning
   * @param customer whose entries alone are wanted, with imports that may be about several; empty
   *     for all
   */
  @Transactional
  List<AuditRow> list(Long before, String customer, int limit) {
    return entities
        .createQuery(
            "from AuditRow where id < :before and (:customer = '' or customer = :customer"
                + " or kind = 'import' and customer = '') order by id desc",
            AuditRow.class)
        .setParameter("before", before == null ? Long.MAX_VALUE : before)
        .setParameter("customer", customer)
        .setMaxResults(limit)
        .getResultList();
  }
}
