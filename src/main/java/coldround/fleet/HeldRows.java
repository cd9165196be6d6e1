package coldround.fleet;

import java.util.function.IntConsumer;

/**
 * New rows of a transaction that are held back, to be written together and in the order of the
 * store.
 */
public interface HeldRows {

  /** How many there are. */
  long held();

  /**
   * Writes them now; else they are when they are read, and at the latest when the transaction ends.
   *
   * @param written told how many more are written
   */
  void writeHeld(IntConsumer written);
}
