package coldround.benchmark;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A store that outlives the services on it: a folder of the embedded database, or a PostgreSQL. */
final class KillStore implements AutoCloseable {

  final Path folder;
  final Path build;
  private final Path data;
  private EmbeddedPostgres server;

  private KillStore(Path folder, Path build) {
    this.folder = folder;
    this.build = build;
    this.data = folder.resolve("data");
  }

  /**
   * @param kind h2 or postgresql
   */
  static KillStore of(String kind) throws IOException {
    Path folder = Files.createTempDirectory("kills");
    Path target = Path.of("target");
    KillStore store =
        switch (kind) {
          case "h2" -> new KillStore(folder, target.resolve("quarkus-app"));
          case "postgresql" -> new KillStore(folder, target.resolve("quarkus-app-postgresql"));
          default -> throw new IllegalArgumentException("a store is h2 or postgresql");
        };
    if (kind.equals("postgresql")) {
      store.startServer(0);
    }
    return store;
  }

  private void startServer(int port) throws IOException {
    var builder =
        EmbeddedPostgres.builder()
            .setDataDirectory(data)
            .setCleanDataDirectory(false)
            .setServerConfig("fsync", "on")
            .setServerConfig("max_connections", "100");
    server = (port == 0 ? builder : builder.setPort(port)).start();
  }

  /** The database goes, with all connections to it. */
  void stopServer() throws IOException {
    server.close();
  }

  /** It comes back where it was. */
  void startServerAgain() throws IOException {
    startServer(server.getPort());
  }

  /** What a service on this store is told. */
  Map<String, String> environment() {
    Map<String, String> told = new TreeMap<>();
    told.put("COLDROUND_DATA", data.toString());
    if (server != null) {
      told.put("QUARKUS_DATASOURCE_JDBC_URL", server.getJdbcUrl("postgres", "postgres"));
      told.put("QUARKUS_DATASOURCE_USERNAME", "postgres");
      told.put("QUARKUS_DATASOURCE_PASSWORD", "postgres");
    }
    return told;
  }

  @Override
  public void close() throws IOException {
    if (server != null) {
      server.close();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
    }
  }
}
