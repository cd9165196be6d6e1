package coldround.app;

import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import coldround.backup.edge.StoreCommands;
import coldround.backup.edge.StoreCommands.Login;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;

/**
 * What the program does beside serving: {@code backup FILE}, {@code restore FILE}, {@code
 * restored}.
 */
final class Commands {

  private static final int BAD_USE = 2;
  private static final String USE =
      "Without arguments this serves. Else: 'backup FILE' writes all that is stored to a new"
          + " file; 'restore FILE' puts it into a store that nobody has used yet; 'restored' says"
          + " in the feed that the store was taken back to an earlier moment by other means.";
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
    StoreCommands store = new StoreCommands(data(), Commands::login, err::println);
    try {
      switch (arguments[0] + "/" + arguments.length) {
        case "backup/2" -> tell("written to", arguments[1], store::backup);
        case "restore/2" -> tell("restored from", arguments[1], store::restore);
        case "restored/1" -> {
          store.restored();
          out.println("marked: the feed goes on at a new place");
        }
        default -> {
          err.println(USE);
          return BAD_USE;
        }
      }
      return 0;
    } catch (BadBackup e) {
      err.println(e.getMessage());
      return 1;
    }
  }

  private void tell(String what, String name, Function<Path, Manifest> command) {
    Path file = Path.of(name);
    Manifest manifest = command.apply(file);
    out.printf(
        "%d rows of %d tables, schema version %d, made %s, %s %s%n",
        manifest.allRows(),
        manifest.rows().size(),
        manifest.schema(),
        manifest.made(),
        what,
        file.toAbsolutePath());
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
