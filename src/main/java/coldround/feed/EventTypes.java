package coldround.feed;

import java.util.List;

/** Every kind of change that the feed tells, each with a schema of its data. */
public final class EventTypes {

  public static final String TASK_PLANNED = "coldround.task.planned";
  public static final String TASK_CHANGED = "coldround.task.changed";
  public static final String TASK_BOOKED = "coldround.task.booked";
  public static final String TASK_UNBOOKED = "coldround.task.unbooked";
  public static final String TASK_COMPLETED = "coldround.task.completed";
  public static final String TASK_WITHDRAWN = "coldround.task.withdrawn";
  public static final String CONDITION_CHANGED = "coldround.condition.changed";
  public static final String CONDITION_ENDED = "coldround.condition.ended";
  public static final String ROUND_PLANNED = "coldround.round.planned";
  public static final String ROUND_CANCELLED = "coldround.round.cancelled";

  public static final String FEED_RESTORED = "coldround.feed.restored";

  public static final List<String> ALL =
      List.of(
          TASK_PLANNED,
          TASK_CHANGED,
          TASK_BOOKED,
          TASK_UNBOOKED,
          TASK_COMPLETED,
          TASK_WITHDRAWN,
          CONDITION_CHANGED,
          CONDITION_ENDED,
          ROUND_PLANNED,
          ROUND_CANCELLED,
          FEED_RESTORED);

  private EventTypes() {}
}
