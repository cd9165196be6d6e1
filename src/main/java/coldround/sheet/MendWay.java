package coldround.sheet;

import coldround.sheet.Fault.Code;

/**
 * One way to cut a record as far as the start of a cell.
 *
 * @param at offset of the start; beyond the end of the record once the last cell is read
 * @param column columns filled so far
 * @param from offset where the last cell starts; {@link #NO_CELL} if the last step gave none
 * @param quoted whether the last cell stands between quotes
 * @param code the departure the last step took, or null
 * @param codes how many of them
 * @param edits delimiters put in, taken out or taken literally so far
 * @param margin how much dearer the next best way to any place on this way is
 */
record MendWay(
    MendWay before,
    int at,
    int column,
    int from,
    int to,
    boolean quoted,
    Code code,
    int codes,
    int edits,
    double cost,
    double margin) {

  static final int NO_CELL = -2;

  private static final double TIE = 1e-9;

  static MendWay start(double margin) {
    return new MendWay(null, 0, 0, NO_CELL, 0, false, null, 0, 0, 0, margin);
  }

  /** One cell further; {@code from} and {@code to} alike give an empty cell. */
  MendWay cell(int next, int from, int to, boolean quoted, double price) {
    return new MendWay(
        this, next, column + 1, from, to, quoted, null, 0, edits, cost + price, margin);
  }

  /** Past an empty cell that is one too many. */
  MendWay past(int next, double price) {
    return new MendWay(
        this, next, column, NO_CELL, NO_CELL, false, null, 0, edits, cost + price, margin);
  }

  /** The same way, its last step a departure from the dialect. */
  MendWay by(Code departure, int times, int edited) {
    return new MendWay(
        before, at, column, from, to, quoted, departure, times, edits + edited, cost, margin);
  }

  MendWay at(int other) {
    return other == at
        ? this
        : new MendWay(before, other, column, from, to, quoted, code, codes, edits, cost, margin);
  }

  /** The cheaper of two ways to one place; ways that give the same cells are no rivals. */
  static MendWay cheaper(MendWay one, MendWay other) {
    double difference = Math.abs(one.cost - other.cost);
    boolean same = difference < TIE && one.from == one.to && other.from == other.to;
    MendWay winner = other.cost < one.cost ? other : one;
    return same ? winner : winner.atMost(difference);
  }

  /** The cheaper of two ways to the end, which may be one and the same. */
  static MendWay best(MendWay one, MendWay other) {
    return one == null || Math.abs(one.cost - other.cost) < TIE
        ? one == null ? other : one
        : cheaper(one, other);
  }

  private MendWay atMost(double other) {
    return other >= margin
        ? this
        : new MendWay(before, at, column, from, to, quoted, code, codes, edits, cost, other);
  }
}
