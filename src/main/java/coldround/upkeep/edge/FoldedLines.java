package coldround.upkeep.edge;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Content lines of a calendar folded as RFC 5545, section 3.1 wants it: at most 75 octets of UTF-8
 * without the line break, no character cut. Libraries count characters.
 */
final class FoldedLines {

  private static final int MOST_OCTETS = 75;
  private static final byte[] BREAK = {'\r', '\n'};

  private FoldedLines() {}

  /**
   * @param calendar lines that end in CRLF, folded in whatever way
   */
  static byte[] of(String calendar) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(calendar.length() + 64);
    for (String line : calendar.replaceAll("\r\n[ \t]", "").split("\r\n")) {
      fold(line, out);
    }
    return out.toByteArray();
  }

  private static void fold(String line, ByteArrayOutputStream out) {
    int octets = 0;
    for (int at = 0; at < line.length(); ) {
      int character = line.codePointAt(at);
      byte[] bytes = Character.toString(character).getBytes(StandardCharsets.UTF_8);
      if (octets + bytes.length > MOST_OCTETS) {
        out.writeBytes(BREAK);
        out.write(' ');
        octets = 1;
      }
      out.writeBytes(bytes);
      octets += bytes.length;
      at += Character.charCount(character);
    }
    out.writeBytes(BREAK);
  }
}
