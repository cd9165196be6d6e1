package coldround.fleet;

/** Takes the whole fleet out of the store, and all that was worked out or planned from it. */
public interface FleetWiping {

  /** Rows of the lists that everything else belongs to. */
  record Size(long customers, long sites, long units, long technicians) {}

  Size size();

  /** How many rounds whoever follows the feed was told of, and not yet called off. */
  long roundsTold();

  /**
   * Readers of the feed are told that tasks and conditions have ended. Accounts and profiles stay.
   */
  void wipe();
}
