package coldround.backup.edge;

import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** A backup to be read. */
final class BackupFile implements AutoCloseable {

  private final ZipFile zip;
  private final Manifest manifest;

  private BackupFile(ZipFile zip, Manifest manifest) {
    this.zip = zip;
    this.manifest = manifest;
  }

  /**
   * @throws BadBackup when it is none
   */
  static BackupFile open(Path file, ObjectMapper json) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new BadBackup("There is no file " + file + ".");
    }
    ZipFile zip;
    try {
      zip = new ZipFile(file.toFile());
    } catch (ZipException e) {
      throw new BadBackup(
          file + " is no whole backup: it is cut off, or another kind of file. Fetch it again.", e);
    }
    try {
      return new BackupFile(zip, manifest(zip, file, json));
    } catch (IOException | RuntimeException e) {
      zip.close();
      throw e;
    }
  }

  private static Manifest manifest(ZipFile zip, Path file, ObjectMapper json) throws IOException {
    ZipEntry entry = zip.getEntry(BackupWriting.MANIFEST);
    if (entry == null) {
      throw foreign(file, null);
    }
    Manifest manifest;
    try (InputStream in = zip.getInputStream(entry)) {
      manifest = json.readValue(in, Manifest.class);
    } catch (IOException e) {
      throw foreign(file, e);
    }
    if (!Manifest.FORMAT.equals(manifest.format())) {
      throw foreign(file, null);
    }
    for (String table : manifest.rows().keySet()) {
      if (zip.getEntry(BackupWriting.file(table)) == null) {
        throw new BadBackup(
            "%s has no %s, which its manifest names. Use another backup."
                .formatted(file, BackupWriting.file(table)));
      }
    }
    return manifest;
  }

  private static BadBackup foreign(Path file, Throwable cause) {
    return new BadBackup(
        "%s is no backup that this version reads: it wants %s in a %s."
            .formatted(file, Manifest.FORMAT, BackupWriting.MANIFEST),
        cause);
  }

  Manifest manifest() {
    return manifest;
  }

  /** One JSON array a line: first the names of the columns, then the rows. */
  BufferedReader lines(String table) throws IOException {
    InputStream in = zip.getInputStream(zip.getEntry(BackupWriting.file(table)));
    return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}
