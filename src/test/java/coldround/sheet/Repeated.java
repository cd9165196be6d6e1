package coldround.sheet;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** A stream of a head and then one part many times, made while it is read. */
final class Repeated extends InputStream {

  private final byte[] head;
  private final byte[] part;
  private long left;
  private int at;
  private boolean inHead = true;

  Repeated(String head, String part, long times) {
    this.head = head.getBytes(StandardCharsets.UTF_8);
    this.part = part.getBytes(StandardCharsets.UTF_8);
    this.left = times;
  }

  @Override
  public int read() {
    if (inHead && at < head.length) {
      return head[at++] & 0xFF;
    }
    if (inHead || at == part.length) {
      left -= inHead ? 0 : 1;
      inHead = false;
      at = 0;
    }
    return left <= 0 ? -1 : part[at++] & 0xFF;
  }

  @Override
  public int read(byte[] target, int offset, int length) {
    int count = 0;
    while (count < length) {
      int b = read();
      if (b < 0) {
        return count == 0 ? -1 : count;
      }
      target[offset + count++] = (byte) b;
    }
    return count;
  }
}
