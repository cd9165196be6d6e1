package coldround.sheet;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Finds the charset of a text: by its byte order mark, by where its zero bytes stand, by being
 * valid UTF-8, else Windows-1252, of which ISO 8859-1 text is a part.
 */
final class CharsetDetector {

  static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  private static final int LOOK = 1 << 16;

  /** Share of zero bytes on one side of the byte pairs that shows UTF-16. */
  private static final double MOSTLY = 0.3;

  /** A charset and the length of the byte order mark before the text. */
  record Found(Charset charset, int mark) {}

  private CharsetDetector() {}

  static Found detect(Head head) {
    if (head.startsWith(0xEF, 0xBB, 0xBF)) {
      return new Found(StandardCharsets.UTF_8, 3);
    }
    if (head.startsWith(0xFF, 0xFE)) {
      return isPaired(head) ? new Found(StandardCharsets.UTF_16LE, 2) : unmarked(head.bytes());
    }
    if (head.startsWith(0xFE, 0xFF)) {
      return isPaired(head) ? new Found(StandardCharsets.UTF_16BE, 2) : unmarked(head.bytes());
    }
    return unmarked(head.bytes());
  }

  /** A text of byte pairs has an even length. */
  private static boolean isPaired(Head head) {
    return !head.isWhole() || head.bytes().length % 2 == 0;
  }

  /** The text of the head, without a character cut in two at its end. */
  static String decode(byte[] bytes, Found found, boolean whole) {
    CharsetDecoder decoder = lenient(found.charset());
    ByteBuffer in = ByteBuffer.wrap(bytes, found.mark(), bytes.length - found.mark());
    CharBuffer out = CharBuffer.allocate((int) (in.remaining() * decoder.maxCharsPerByte()) + 2);
    decoder.decode(in, out, whole);
    return out.flip().toString();
  }

  /** A decoder that puts U+FFFD for what it cannot read, so that the row can be named. */
  static CharsetDecoder lenient(Charset charset) {
    return charset
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPLACE)
        .onUnmappableCharacter(CodingErrorAction.REPLACE);
  }

  private static Found unmarked(byte[] bytes) {
    int pairs = Math.min(bytes.length, LOOK) / 2;
    int high = 0;
    int low = 0;
    for (int i = 0; i < pairs; i++) {
      high += bytes[2 * i] == 0 ? 1 : 0;
      low += bytes[2 * i + 1] == 0 ? 1 : 0;
    }
    if (low > MOSTLY * pairs && high < low / 4) {
      return new Found(StandardCharsets.UTF_16LE, 0);
    }
    if (high > MOSTLY * pairs && low < high / 4) {
      return new Found(StandardCharsets.UTF_16BE, 0);
    }
    return new Found(singleBytes(bytes), 0);
  }

  private static Charset singleBytes(byte[] bytes) {
    int valid = 0;
    int broken = 0;
    int plausible = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] >= 0) {
        continue;
      }
      int length = sequence(bytes, i);
      if (length > 1) {
        valid++;
        i += length - 1;
      } else if (length < 0) {
        broken++;
        plausible += isLikely1252(bytes, i) ? 1 : 0;
      }
    }
    return broken > valid && 2 * plausible >= broken ? WINDOWS_1252 : StandardCharsets.UTF_8;
  }

  /**
   * Length of the UTF-8 sequence at {@code at}, 0 if the bytes end inside it, -1 if it is none (RFC
   * 3629, section 4).
   */
  private static int sequence(byte[] bytes, int at) {
    int first = bytes[at] & 0xFF;
    int length = first >= 0xF0 && first <= 0xF4 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : -1;
    if (length < 0 || first > 0xF4) {
      return -1;
    }
    for (int k = 1; k < length; k++) {
      if (at + k >= bytes.length) {
        return 0;
      }
      if ((bytes[at + k] & 0xC0) != 0x80) {
        return -1;
      }
    }
    return length;
  }

  /** A letter beside a letter, or a sign that texts use; not a byte the charset leaves out. */
  private static boolean isLikely1252(byte[] bytes, int at) {
    int b = bytes[at] & 0xFF;
    if (b == 0x81 || b == 0x8D || b == 0x8F || b == 0x90 || b == 0x9D) {
      return false;
    }
    if (b >= 0xC0 && b != 0xD7 && b != 0xF7) {
      return isLetter(bytes, at - 1) || isLetter(bytes, at + 1);
    }
    return true;
  }

  private static boolean isLetter(byte[] bytes, int at) {
    return at >= 0 && at < bytes.length && bytes[at] > 0 && Character.isLetter(bytes[at]);
  }
}
