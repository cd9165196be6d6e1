package coldround.sheet;

/** The bytes are not a table of text at all; says what they seem to be and how to mend that. */
public final class NotASheet extends IllegalArgumentException {

  /** Why the bytes are refused; the name in lower case with hyphens is the stable code. */
  public enum Reason {
    EMPTY("the file is empty", "Send a file with a header line and at least one row."),
    OLD_WORKBOOK(
        "the file is a workbook in the binary format of before 2007",
        "Open it in the spreadsheet program and save it as .xlsx or as CSV (UTF-8)."),
    COMPRESSED("the file is compressed", "Unpack it and send the file inside."),
    WEB_PAGE(
        "the file is a web page, not a table of text",
        "Open it in a spreadsheet program and save it as CSV (UTF-8)."),
    MARKUP("the file is XML, not a table of text", "Export the list as CSV (UTF-8)."),
    JSON("the file is JSON, not a table of text", "Export the list as CSV (UTF-8)."),
    DOCUMENT("the file is a document or picture, not a table of text", "Export the list as CSV."),
    UNSUPPORTED_CHARSET("the file is in UTF-32", "Save it as CSV (UTF-8)."),
    BINARY("the file holds bytes that are not text", "Export the list as CSV (UTF-8)."),
    UNREADABLE_WORKBOOK(
        "the file is a damaged workbook or another archive",
        "Open it in the spreadsheet program and save it again as .xlsx or as CSV (UTF-8)."),
    NO_SUCH_SHEET("the workbook has no sheet of that name", "Name one of its sheets.");

    private final String text;
    private final String mend;

    Reason(String text, String mend) {
      this.text = text;
      this.mend = mend;
    }

    /** The stable code, for example {@code web-page}. */
    public String code() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  private static final long serialVersionUID = 1L;

  private final Reason reason;
  private final String mend;

  public NotASheet(Reason reason) {
    this(reason, reason.mend);
  }

  public NotASheet(Reason reason, String mend) {
    super(reason.text + ". " + mend);
    this.reason = reason;
    this.mend = mend;
  }

  public Reason reason() {
    return reason;
  }

  /** What the sender can do about it. */
  public String mend() {
    return mend;
  }
}
