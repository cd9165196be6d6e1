package coldround.sheet;

/**
 * What is wrong with one record, or what had to be mended to read it.
 *
 * @param code stable short name of the fault
 * @param message what was seen and what was done about it, for the person who sent the file
 * @param mended true if one reading stands out and was taken; false if the cells are not to be
 *     trusted
 */
public record Fault(Code code, String message, boolean mended) {

  /** Kinds of faults; the name in lower case with hyphens is the stable code. */
  public enum Code {
    STRAY_QUOTE,
    UNCLOSED_QUOTE,
    MISSING_DELIMITER,
    SURPLUS_DELIMITER,
    OTHER_DELIMITER,
    TOO_FEW_CELLS,
    TOO_MANY_CELLS,
    RECORD_TOO_LONG,
    NUL_CHARACTER,
    UNDECODABLE,
    SECOND_TABLE;

    /** The stable code as it stands in a receipt, for example {@code stray-quote}. */
    public String text() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  static Fault mended(Code code, String message) {
    return new Fault(code, message, true);
  }

  static Fault open(Code code, String message) {
    return new Fault(code, message, false);
  }
}
