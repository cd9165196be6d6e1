package coldround.table;

/**
 * What results that are kept were worked out with: the version of the program and its rule tables.
 */
public record Basis(String text) {}
