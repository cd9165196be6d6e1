package coldround.http;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/**
 * What only one instance on a database does at a time. The turn ends with the transaction, and with
 * the connection where the instance dies.
 */
@ApplicationScoped
public class Turns {

  /** Files into the store: two at once would find the same unit missing and both make it. */
  public static final String IMPORTS = "imports";

  /** The whole fleet worked out anew. */
  public static final String EVERYDAY = "everyday";

  private final EntityManager entities;

  @Inject
  public Turns(EntityManager entities) {
    this.entities = entities;
  }

  /** Waits for its turn, for as long as the transaction may take; the caller holds it. */
  @Transactional(Transactional.TxType.MANDATORY)
  public void await(String what) {
    entities
        .createNativeQuery("select name from turn where name = :what for update", String.class)
        .setParameter("what", what)
        .getSingleResult();
  }
}
