package coldround.field;

/**
 * What is wrong with one field of a visit that was sent.
 *
 * @param path the field as a JSON pointer (RFC 6901)
 * @param value as it was sent, shortened where it is long
 * @param message what is wrong and how to mend it
 */
public record FieldProblem(String path, String value, String message) {}
