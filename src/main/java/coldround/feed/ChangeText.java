package coldround.feed;

/**
 * One change as it is kept.
 *
 * @param type such as coldround.task.planned
 * @param subject what changed: the id of a task, unit or round
 * @param data how it stands now, as JSON
 */
public record ChangeText(String type, String subject, String data) {}
