package coldround.feed;

/**
 * One change that the outside may want to know of.
 *
 * @param type such as coldround.task.planned
 * @param subject what changed: the id of a task, unit or round
 * @param data how it stands now, to be written as JSON
 */
public record Change(String type, String subject, Object data) {}
