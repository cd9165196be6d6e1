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
   * Whoever holds the transaction follows the writing and may end it by what it throws.
   *
   * @param written told how many more are written, whenever some are
   */
  void follow(IntConsumer written);

  /**
   * Writes them now; else they are when there are very many, when they are read, and at the latest
   * when the transaction ends.
   */
  void writeHeld();
}
