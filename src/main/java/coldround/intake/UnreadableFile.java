package coldround.intake;

import coldround.sheet.NotASheet;

/** The file as a whole cannot be used, so that none of its rows can; says what and how to mend. */
public final class UnreadableFile extends RuntimeException {

  private final String code;

  /**
   * @param code stable name, such as wrong-header
   */
  public UnreadableFile(String code, String message) {
    super(message);
    this.code = code;
  }

  static UnreadableFile of(NotASheet refusal) {
    String code =
        switch (refusal.reason()) {
          case EMPTY -> "empty-file";
          case NO_SUCH_SHEET -> "no-such-sheet";
          default -> "not-csv";
        };
    return new UnreadableFile(code, refusal.getMessage());
  }

  public String code() {
    return code;
  }
}
