package coldround.backup;

/** A backup that cannot be made or restored as asked; the message says why and how to mend it. */
public final class BadBackup extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public BadBackup(String message) {
    super(message);
  }

  public BadBackup(String message, Throwable cause) {
    super(message, cause);
  }
}
