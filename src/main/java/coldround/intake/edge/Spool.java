package coldround.intake.edge;

import coldround.http.Problem;
import coldround.sheet.Scratch;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/** A file that lives as long as one import. */
final class Spool implements AutoCloseable {

  private static final int PIECE = 1 << 16;

  private final Path file;
  private final boolean borrowed;

  private Spool(Path file, boolean borrowed) {
    this.file = file;
    this.borrowed = borrowed;
  }

  /** The same file for one more import; it stays when that one closes it. */
  Spool borrowed() {
    return new Spool(file, true);
  }

  static Spool empty() {
    try {
      return new Spool(Scratch.file("import", ".csv"), false);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * What was sent, in a file, so that it can be read more than once and a slow sender holds no
   * transaction open.
   *
   * @throws Problem 413 when there is more than {@code mostBytes}
   */
  static Spool of(InputStream sent, long mostBytes) {
    Spool spool = empty();
    try (OutputStream out = Files.newOutputStream(spool.file)) {
      copy(sent, out, mostBytes);
      return spool;
    } catch (IOException e) {
      spool.close();
      throw new UncheckedIOException(e);
    } catch (RuntimeException e) {
      spool.close();
      throw e;
    }
  }

  private static void copy(InputStream sent, OutputStream out, long mostBytes) throws IOException {
    byte[] piece = new byte[PIECE];
    long all = 0;
    for (int read = sent.read(piece); read >= 0; read = sent.read(piece)) {
      all += read;
      if (all > mostBytes) {
        throw tooLarge(mostBytes);
      }
      out.write(piece, 0, read);
    }
  }

  private static Problem tooLarge(long mostBytes) {
    return new Problem(
        413,
        "file-too-large",
        "The file is too large",
        "A file may have at most %d bytes. Send it in parts, or let the operator raise %s."
            .formatted(mostBytes, "coldround.upload.most-bytes"),
        List.of());
  }

  /**
   * Text to be written to the file, in UTF-8 and packed: the same problems come again and again.
   */
  Writer packedText() {
    try {
      OutputStream packed = new GZIPOutputStream(Files.newOutputStream(file), PIECE);
      return new BufferedWriter(new OutputStreamWriter(packed, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Path file() {
    return file;
  }

  @Override
  public void close() {
    if (borrowed) {
      return;
    }
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
