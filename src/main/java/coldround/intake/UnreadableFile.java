package coldround.intake;

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

  public String code() {
    return code;
  }
}
