package coldround.backup.edge;

/** A column of a table in the store. */
record Column(String name, CellType type, boolean numbered) {}
