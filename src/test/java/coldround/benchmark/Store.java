package coldround.benchmark;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.File;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A store of either kind that outlives the services on it: a folder with files of the embedded
 * database, or a PostgreSQL that is started for it and writes each commit to the disk. All is
 * deleted when it is closed.
 */
final class Store implements AutoCloseable {

  /** Which database, with the build of the service for it. */
  enum Kind {
    H2("quarkus-app", "-Pbare"),
    POSTGRESQL(
        "quarkus-app-postgresql",
        "-Pbare,postgresql -Dquarkus.package.output-directory=quarkus-app-postgresql");

    private final String folder;
    private final String options;

    Kind(String folder, String options) {
      this.folder = folder;
      this.options = options;
    }

    /**
     * @param name h2 or postgresql
     */
    static Kind of(String name) {
      for (Kind kind : values()) {
        if (name.equals(kind.toString())) {
          return kind;
        }
      }
      throw new IllegalArgumentException("a store is h2 or postgresql");
    }

    /** That a program is called for by the last word of its command, where there is one. */
    static Kind in(String command) {
      return command.endsWith(" " + POSTGRESQL) ? POSTGRESQL : H2;
    }

    /** The command of a program that names no store, to run on one of this kind. */
    String onto(String command) {
      return this == H2 ? command : command + " " + this;
    }

    /** What {@link #onto} was made of. */
    String off(String command) {
      return this == H2 ? command : command.substring(0, command.length() - (" " + this).length());
    }

    /** What is started; it may not be there. */
    Path jar() {
      return Path.of("target", folder, "quarkus-run.jar");
    }

    /**
     * The command that builds the service for it, with the endpoint that gives bytes from memory.
     */
    String buildCommand() {
      return "mvn -q -DskipTests " + options + " package";
    }

    /**
     * What is started.
     *
     * @throws IllegalArgumentException when it was not built
     */
    Path built() {
      if (!Files.exists(jar())) {
        throw new IllegalArgumentException("there is no " + jar() + "; run " + buildCommand());
      }
      return jar();
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Of the service. */
  static final String DATABASE = "coldround";

  private static final String USER = "postgres";
  private static final Path SETTINGS = Path.of("src/main/resources/application.properties");

  final Kind kind;

  /** For what belongs to the store, such as logs. */
  final Path folder;

  private final Path data;
  private final Set<String> made = new HashSet<>();
  private EmbeddedPostgres server;

  private Store(Kind kind, Path folder) throws IOException {
    this.kind = kind;
    this.folder = folder;
    this.data = Files.createDirectory(folder.resolve("data"));
  }

  static Store of(Kind kind) throws IOException {
    Store store = new Store(kind, Files.createTempDirectory("coldround-store"));
    if (kind == Kind.POSTGRESQL) {
      store.startServer(0);
    }
    return store;
  }

  private void startServer(int port) throws IOException {
    var builder =
        EmbeddedPostgres.builder()
            .setDataDirectory(folder.resolve("server"))
            .setCleanDataDirectory(false)
            // as a server is that loses nothing; what is embedded does without both
            .setServerConfig("fsync", "on")
            .setServerConfig("synchronous_commit", "on")
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

  /**
   * JDBC address of one of its databases, with user and password, set up as that of the service is.
   * While a service is on it, that of the embedded database is not to be opened.
   */
  String url(String database) throws IOException {
    if (kind == Kind.H2) {
      Properties settings = new Properties();
      try (Reader reader = Files.newBufferedReader(SETTINGS)) {
        settings.load(reader);
      }
      return settings
              .getProperty("quarkus.datasource.jdbc.url")
              .replace("${coldround.data}/" + DATABASE, data.resolve(database).toString())
          + ";USER="
          + settings.getProperty("quarkus.datasource.username")
          + ";PASSWORD="
          + settings.getProperty("quarkus.datasource.password");
    }
    make(database);
    return server.getJdbcUrl(USER, database);
  }

  private void make(String database) throws IOException {
    if (made.add(database)) {
      try (Connection connection = DriverManager.getConnection(server.getJdbcUrl(USER, USER));
          Statement statement = connection.createStatement()) {
        statement.execute("create database " + database);
      } catch (SQLException e) {
        throw new IOException(e);
      }
    }
  }

  /**
   * After much has been written PostgreSQL clears up when it thinks fit: it does so now, that what
   * is measured next is not that.
   */
  void settle() throws IOException {
    if (kind == Kind.POSTGRESQL) {
      try (Connection connection = DriverManager.getConnection(url(DATABASE));
          Statement statement = connection.createStatement()) {
        statement.execute("vacuum analyze");
        statement.execute("checkpoint");
      } catch (SQLException e) {
        throw new IOException(e);
      }
    }
  }

  /** What a service on this store is told. */
  Map<String, String> environment() throws IOException {
    Map<String, String> told = new TreeMap<>();
    told.put("COLDROUND_DATA", data.toString());
    if (server != null) {
      told.put("QUARKUS_DATASOURCE_JDBC_URL", url(DATABASE));
      told.put("QUARKUS_DATASOURCE_USERNAME", USER);
      told.put("QUARKUS_DATASOURCE_PASSWORD", USER);
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
