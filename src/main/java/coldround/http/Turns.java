package coldround.http;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;

/**
 * What only one instance on a database does at a time. The turn ends with the transaction, and with
 * the connection where the instance dies. Within an instance they queue before the database, which
 * gives those that wait for a row little time.
 */
@ApplicationScoped
public class Turns {

  /** Files into the store: two at once would find the same unit missing and both make it. */
  public static final String IMPORTS = "imports";

  /** The whole fleet worked out anew; taken before that of imports by whoever takes both. */
  public static final String EVERYDAY = "everyday";

  private final EntityManager entities;
  private final TransactionSynchronizationRegistry transaction;
  private final Map<String, Semaphore> here = new ConcurrentHashMap<>();

  @Inject
  public Turns(EntityManager entities, TransactionSynchronizationRegistry transaction) {
    this.entities = entities;
    this.transaction = transaction;
  }

  /** Waits for its turn, for as long as the transaction may take; the caller holds it. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void await(String what) {
    Semaphore turn = here.computeIfAbsent(what, its -> new Semaphore(1, true));
    turn.acquireUninterruptibly();
    try {
      transaction.registerInterposedSynchronization(end(turn));
    } catch (RuntimeException over) {
      turn.release();
      throw over;
    }
    entities
        .createNativeQuery("select name from turn where name = :what for update", String.class)
        .setParameter("what", what)
        .getSingleResult();
  }

  private static Synchronization end(Semaphore turn) {
    return new Synchronization() {
      @Override
      public void beforeCompletion() {
        // it lasts until the transaction has ended
      }

      @Override
      public void afterCompletion(int status) {
        turn.release();
      }
    };
  }
}
