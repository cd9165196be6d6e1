package coldround.rounds.edge;

/**
 * Who works on a plan: whoever began it, planned it anew or took it up again last. One that paused
 * for so long that another instance took its plan up has lost it, and must not write it any more.
 *
 * @param revision of the plan when the work began
 * @param resumed how often this revision had been taken up again by then
 */
record Hold(String plan, int revision, int resumed) {

  static Hold first(String plan) {
    return new Hold(plan, 0, 0);
  }

  /** What came of writing to a plan. */
  enum Kept {
    WRITTEN,
    /** Somebody is content with the best so far. */
    STOP_ASKED,
    /** Nothing was written: the plan is another's, or ended. */
    LOST
  }
}
