package coldround.app;

import coldround.access.OpenDoor;
import coldround.table.BadTables;
import io.quarkus.logging.Log;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.nio.file.Path;

/** Starts the service, or runs the command that is named. */
@QuarkusMain
public class Main {

  private static final String DATA = "coldround.data";

  private Main() {}

  public static void main(String... arguments) {
    absoluteDataFolder();
    if (arguments.length > 0) {
      System.exit(new Commands(System.out, System.err).run(arguments));
    }
    Quarkus.run(null, Main::ended, arguments);
  }

  // the embedded database takes no path that is relative without saying so
  private static void absoluteDataFolder() {
    String said = System.getProperty(DATA, System.getenv().getOrDefault("COLDROUND_DATA", "data"));
    System.setProperty(DATA, Path.of(said).toAbsolutePath().toString());
  }

  private static void ended(Integer code, Throwable failure) {
    boolean told = false;
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof BadTables || cause instanceof OpenDoor) {
        System.err.println(cause.getMessage());
        told = true;
      }
    }
    if (failure != null && !told) {
      Log.error("the service cannot go on", failure);
    }
    if (failure != null) {
      System.exit(1);
    }
    System.exit(code);
  }
}
