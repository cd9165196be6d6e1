package coldround.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;

/** The first bytes of a stream, looked at before the whole of it is read. */
final class Head {

  /** Bytes looked at to find charset, dialect and layout. */
  static final int SIZE = 1 << 20;

  private final byte[] bytes;
  private final boolean whole;
  private final InputStream rest;

  private Head(byte[] bytes, boolean whole, InputStream rest) {
    this.bytes = bytes;
    this.whole = whole;
    this.rest = rest;
  }

  static Head of(InputStream in) throws IOException {
    byte[] bytes = in.readNBytes(SIZE);
    return new Head(bytes, bytes.length < SIZE, in);
  }

  byte[] bytes() {
    return bytes;
  }

  /** Whether the head is the whole stream. */
  boolean isWhole() {
    return whole;
  }

  /** The stream from its start but for the first {@code skip} bytes. */
  InputStream stream(int skip) {
    return new SequenceInputStream(
        new ByteArrayInputStream(bytes, skip, bytes.length - skip), rest);
  }

  boolean startsWith(int... prefix) {
    if (bytes.length < prefix.length) {
      return false;
    }
    for (int i = 0; i < prefix.length; i++) {
      if ((bytes[i] & 0xFF) != prefix[i]) {
        return false;
      }
    }
    return true;
  }
}
