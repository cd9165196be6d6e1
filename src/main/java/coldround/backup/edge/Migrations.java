package coldround.backup.edge;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;

/**
 * Brings a schema to a version without a running service. The packaged service knows its migrations
 * from the time it was built and its class loader lists no folders, so they are laid out as files.
 */
final class Migrations implements AutoCloseable {

  private static final String PLACE = "db/migration";

  private final Path folder;

  Migrations() throws IOException {
    folder = Files.createTempDirectory("coldround-migrations");
    try {
      layOut();
    } catch (IOException | RuntimeException e) {
      close();
      throw e;
    }
  }

  private void layOut() throws IOException {
    Path home = home();
    if (Files.isDirectory(home)) {
      copy(home.resolve(PLACE));
    } else {
      try (FileSystem jar = FileSystems.newFileSystem(home)) {
        copy(jar.getPath(PLACE));
      }
    }
  }

  private static Path home() {
    try {
      URI source = Migrations.class.getProtectionDomain().getCodeSource().getLocation().toURI();
      return Path.of(source);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private void copy(Path place) throws IOException {
    try (Stream<Path> files = Files.list(place)) {
      for (Path file : files.toList()) {
        try (InputStream in = Files.newInputStream(file)) {
          Files.copy(in, folder.resolve(file.getFileName().toString()));
        }
      }
    }
  }

  /** The newest version that there is. */
  int newest() {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .mapToInt(name -> Integer.parseInt(name.substring(1, name.indexOf("__"))))
          .max()
          .orElse(0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @param version which is reached; what is there already stays
   */
  void upTo(int version, String url, String user, String password) {
    Flyway.configure()
        .dataSource(url, user, password)
        .locations("filesystem:" + folder)
        .target(MigrationVersion.fromVersion(Integer.toString(version)))
        .load()
        .migrate();
  }

  @Override
  public void close() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : List.copyOf(files.toList())) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
