package coldround.app;

import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import coldround.backup.edge.StoreCommands;
import coldround.backup.edge.StoreCommands.Login;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;

/** What the program does beside serving: {@code backup FILE} and {@code restore FILE}. */
final class Commands {

  private static final int BAD_USE = 2;
  private static final String DATA = "coldround.data";
  private static final String STORE = "quarkus.datasource.";

  private final PrintStream out;
  private final PrintStream err;

  Commands(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  /** Code to exit with: 0 done, 1 not done, 2 called wrongly. */
  int run(String... arguments) {
    if (arguments.length != 2 || !arguments[0].matches("backup|restore")) {
      err.println(
          "Without arguments this serves. Else: 'backup FILE' writes all that is stored to a new"
              + " file; 'restore FILE' puts it into a store that nobody has used yet.");
      return BAD_USE;
    }
    Path file = Path.of(arguments[1]);
    try {
      StoreCommands store = new StoreCommands(data(), Commands::login);
      if (arguments[0].equals("backup")) {
        tell("written to " + file.toAbsolutePath(), store.backup(file));
      } else {
        tell("restored from " + file.toAbsolutePath(), store.restore(file));
      }
      return 0;
    } catch (BadBackup e) {
      err.println(e.getMessage());
      return 1;
    }
  }

  private void tell(String what, Manifest manifest) {
    out.printf(
        "%d rows of %d tables, schema version %d, made %s, %s%n",
        manifest.allRows(), manifest.rows().size(), manifest.schema(), manifest.made(), what);
  }

  /** Folder of the embedded database; a server has none. */
  private static Optional<Path> data() {
    Config config = ConfigProvider.getConfig();
    boolean embedded =
        config.getValue(STORE + "jdbc.url", String.class).startsWith("jdbc:h2:file:");
    return embedded ? Optional.of(Path.of(config.getValue(DATA, String.class))) : Optional.empty();
  }

  private static Login login(Optional<Path> folder) {
    Config config = ConfigProvider.getConfig();
    String url = config.getValue(STORE + "jdbc.url", String.class);
    return new Login(
        folder
            .map(other -> url.replace(config.getValue(DATA, String.class), other + ""))
            .orElse(url),
        config.getValue(STORE + "username", String.class),
        config.getValue(STORE + "password", String.class));
  }
}
