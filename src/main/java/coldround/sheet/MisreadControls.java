package coldround.sheet;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.Charset;

/**
 * Puts the character that was meant for each control character U+0080 to U+009F: a text written in
 * Windows-1252 and taken for ISO 8859-1 on its way has them where dashes and quotation marks were.
 */
final class MisreadControls extends FilterReader {

  private static final char[] MEANT = meant();

  MisreadControls(Reader in) {
    super(in);
  }

  /** Whether a text has such characters. */
  static boolean in(String text) {
    return text.chars().anyMatch(MisreadControls::isMisread);
  }

  static String repaired(String text) {
    char[] characters = text.toCharArray();
    repair(characters, 0, characters.length);
    return new String(characters);
  }

  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    int read = super.read(buffer, offset, length);
    if (read > 0) {
      repair(buffer, offset, read);
    }
    return read;
  }

  @Override
  public int read() throws IOException {
    int c = super.read();
    return isMisread(c) ? MEANT[c - 0x80] : c;
  }

  private static void repair(char[] buffer, int offset, int length) {
    for (int i = offset; i < offset + length; i++) {
      if (isMisread(buffer[i])) {
        buffer[i] = MEANT[buffer[i] - 0x80];
      }
    }
  }

  /** U+0085 is a line end of its own in some texts and stays. */
  private static boolean isMisread(int c) {
    return c >= 0x80 && c <= 0x9F && c != 0x85 && MEANT[c - 0x80] != 0xFFFD;
  }

  private static char[] meant() {
    byte[] bytes = new byte[0x20];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) (0x80 + i);
    }
    return new String(bytes, Charset.forName("windows-1252")).toCharArray();
  }
}
