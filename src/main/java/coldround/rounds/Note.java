package coldround.rounds;

/**
 * Something that could not be planned as it is, or that a reader of the plan should know.
 *
 * @param code stable for programs, such as no-coordinates
 * @param subject what it is about: a site, technician or task
 * @param message what is wrong and how to mend it
 */
public record Note(String code, String subject, String message) {}
