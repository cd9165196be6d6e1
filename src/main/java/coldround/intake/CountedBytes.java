package coldround.intake;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file whose reader can be asked from another thread how far it has come. */
public final class CountedBytes extends FilterInputStream {

  private volatile long read;

  private CountedBytes(InputStream in) {
    super(in);
  }

  static CountedBytes of(Path file) throws IOException {
    return new CountedBytes(Files.newInputStream(file));
  }

  /** Bytes handed out so far. */
  public long count() {
    return read;
  }

  // only the reading thread writes the count
  private void count(long more) {
    if (more > 0) {
      read = read + more;
    }
  }

  @Override
  public int read() throws IOException {
    int one = super.read();
    count(one < 0 ? 0 : 1);
    return one;
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    int some = super.read(bytes, from, length);
    count(some);
    return some;
  }

  @Override
  public long skip(long most) throws IOException {
    long skipped = super.skip(most);
    count(skipped);
    return skipped;
  }
}
