package coldround.benchmark;

/** Work during which a service is killed, and what must be true of it afterwards. */
interface Harm {

  /** What is going on at the moment of the kill. */
  String name();

  /** Longest time to the kill, in milliseconds from the begin of the work. */
  int longest();

  /** Makes ready what the work needs; nobody is killed yet. */
  default void prepare(KillableService service) throws Exception {
    // most need nothing
  }

  /** Works until it is done or the service is gone. */
  void work(KillableService service) throws Exception;

  /**
   * What was answered is there, nothing is there twice, nothing is there by half.
   *
   * @return what was found, in short
   * @throws IllegalStateException when it is not so
   */
  String check(KillableService service) throws Exception;

  static void check(boolean holds, String what) {
    if (!holds) {
      throw new IllegalStateException(what);
    }
  }
}
