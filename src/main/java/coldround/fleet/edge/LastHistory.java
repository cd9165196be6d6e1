package coldround.fleet.edge;

import coldround.fleet.UnitHistory;
import coldround.fleet.edge.StoredEquipment.Equipment;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.Optional;

/**
 * The history that this transaction has read by itself, until visits or faults are written: what
 * comes for one unit asks for it again and again.
 */
@ApplicationScoped
class LastHistory {

  /**
   * @param unit as it was read, not read again since
   */
  private record Read(Equipment unit, UnitHistory history) {}

  private final TransactionSynchronizationRegistry transaction;

  @Inject
  LastHistory(TransactionSynchronizationRegistry transaction) {
    this.transaction = transaction;
  }

  Optional<UnitHistory> of(Equipment unit) {
    return transaction.getResource(LastHistory.class) instanceof Read last && last.unit == unit
        ? Optional.of(last.history)
        : Optional.empty();
  }

  void keep(Equipment unit, UnitHistory history) {
    transaction.putResource(LastHistory.class, new Read(unit, history));
  }

  /** To be called before visits or faults are written. */
  void forget() {
    transaction.putResource(LastHistory.class, null);
  }
}
