package coldround.sheet;

import coldround.sheet.NotASheet.Reason;
import java.util.Locale;

/** Refuses bytes that are no table of text, by their first bytes and by what they consist of. */
final class ContentCheck {

  /** Share of control characters beyond which bytes are not text. */
  private static final double MOST_CONTROLS = 0.05;

  /** Share of bytes that no charset explains beyond which bytes are not text. */
  private static final double MOST_LOST = 0.2;

  private ContentCheck() {}

  /** Whether the bytes are a zip archive, as every {@code .xlsx} workbook is. */
  static boolean isZip(Head head) {
    return head.startsWith('P', 'K', 3, 4) || head.startsWith('P', 'K', 5, 6);
  }

  /** Checks the raw bytes, before any charset is known. */
  static void bytes(Head head) {
    refuseIf(head.bytes().length == 0, Reason.EMPTY);
    refuseIf(head.startsWith(0xD0, 0xCF, 0x11, 0xE0), Reason.OLD_WORKBOOK);
    refuseIf(
        head.startsWith(0x1F, 0x8B)
            || head.startsWith('B', 'Z', 'h')
            || head.startsWith('7', 'z', 0xBC, 0xAF)
            || head.startsWith(0xFD, '7', 'z', 'X')
            || head.startsWith('R', 'a', 'r', '!'),
        Reason.COMPRESSED);
    refuseIf(
        head.startsWith('%', 'P', 'D', 'F')
            || head.startsWith(0x89, 'P', 'N', 'G')
            || head.startsWith(0xFF, 0xD8, 0xFF)
            || head.startsWith('G', 'I', 'F', '8')
            || head.startsWith('{', '\\', 'r', 't', 'f'),
        Reason.DOCUMENT);
    refuseIf(
        head.startsWith(0xFF, 0xFE, 0, 0) || head.startsWith(0, 0, 0xFE, 0xFF),
        Reason.UNSUPPORTED_CHARSET);
  }

  /** Checks the decoded head. */
  static void text(String text) {
    String start = text.substring(0, Math.min(400, text.length())).strip();
    refuseIf(text.isBlank() || text.chars().allMatch(c -> c <= ' '), Reason.EMPTY);
    String lower = start.toLowerCase(Locale.ROOT);
    refuseIf(isWebPage(lower), Reason.WEB_PAGE);
    refuseIf(lower.startsWith("<?xml"), Reason.MARKUP);
    refuseIf(isJson(lower), Reason.JSON);
    long lost = text.chars().filter(c -> c == '\uFFFD').count();
    refuseIf(lost > MOST_LOST * text.length(), Reason.BINARY);
    long controls = text.chars().filter(ContentCheck::isForeign).count();
    refuseIf(controls > MOST_CONTROLS * text.length(), Reason.BINARY);
  }

  private static boolean isWebPage(String start) {
    return start.startsWith("<html")
        || start.startsWith("<!doctype")
        || start.startsWith("<table")
        || start.startsWith("<head")
        || start.startsWith("<meta");
  }

  private static boolean isJson(String start) {
    String dense = start.replaceAll("\\s+", "");
    return dense.startsWith("{\"") || dense.startsWith("[{") || dense.startsWith("[[\"");
  }

  /** Control characters other than tab, line ends, end-of-file mark and unit separators. */
  private static boolean isForeign(int c) {
    boolean separator = c == 0x1A || c == 0x01 || (c >= 0x1C && c <= 0x1F);
    boolean control = c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' && !separator;
    return control || c == 0x7F;
  }

  private static void refuseIf(boolean wrong, Reason reason) {
    if (wrong) {
      throw new NotASheet(reason);
    }
  }
}
