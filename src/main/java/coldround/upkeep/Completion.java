package coldround.upkeep;

import java.time.LocalDate;

/**
 * That a task is done.
 *
 * @param visit number of the visit that did it
 * @param completed day of the visit
 */
public record Completion(String taskId, String visit, LocalDate completed) {}
