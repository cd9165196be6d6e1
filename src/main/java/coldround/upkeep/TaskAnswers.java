package coldround.upkeep;

import java.util.Optional;

/** What the scheduling system answers to tasks. The caller holds the transaction. */
public interface TaskAnswers {

  /**
   * All that is known of a task beside its reasons.
   *
   * @param open true while it is on the list of tasks
   * @param booking null for none
   * @param completion null for none
   */
  record Known(
      String taskId,
      String unitId,
      String task,
      boolean open,
      Booking booking,
      Completion completion) {}

  /** Empty for a task that there never was. */
  Optional<Known> known(String taskId);

  /**
   * Id of the unit that the task is of. What is known besides is not read with it, and so may be
   * read when the unit is locked.
   */
  Optional<String> unit(String taskId);

  /** Puts the booking in the place of an earlier one. */
  void book(Known task, Booking booking);

  /** Takes the booking away. */
  void cancel(Known task);

  /** Notes that a visit is about to do the task: when it goes from the list, it is completed. */
  void complete(Known task, Completion completion);

  /**
   * Called when the visit is stored.
   *
   * @return false when the task is still open and so was not completed
   */
  boolean settle(Known task, Completion completion);
}
