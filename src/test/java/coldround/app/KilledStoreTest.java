package coldround.app;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What has been answered is in the embedded database, also when the service is killed at once. */
class KilledStoreTest {

  private static final int COMMITS = 300;

  @TempDir Path folder;

  /** Commits again and again, and says so each time, as the service answers calls. */
  static final class Writer {
    public static void main(String... arguments) throws Exception {
      try (Connection store = DriverManager.getConnection(arguments[0], "sa", "");
          Statement statement = store.createStatement()) {
        statement.execute("create table told (id int primary key)");
        store.setAutoCommit(false);
        for (int i = 1; ; i++) {
          statement.execute("insert into told values (" + i + ")");
          store.commit();
          System.out.println(i);
        }
      }
    }
  }

  @Test
  void whatWasCommittedBeforeTheKillIsThereAfterIt() throws Exception {
    String url = url();
    Path said = folder.resolve("said");
    Process writer =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Writer.class.getName(),
                url)
            .redirectOutput(said.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    while (answered(said) < COMMITS && writer.isAlive()) {
      Thread.sleep(5);
    }
    writer.destroyForcibly().waitFor();
    int answered = answered(said);
    assertTrue(answered >= COMMITS, "commits: " + answered);
    try (Connection store = DriverManager.getConnection(url, "sa", "");
        Statement statement = store.createStatement();
        ResultSet found = statement.executeQuery("select count(*) from told")) {
      found.next();
      assertTrue(found.getInt(1) >= answered, found.getInt(1) + " of " + answered);
    }
  }

  /** The last line may have been cut. */
  private static int answered(Path said) throws IOException {
    String text = Files.readString(said);
    return (int) text.chars().filter(c -> c == '\n').count();
  }

  /** The address of the database as the service is packaged with, in a folder of the test. */
  private String url() throws IOException {
    Properties packaged = new Properties();
    try (InputStream in = getClass().getResourceAsStream("/application.properties")) {
      packaged.load(in);
    }
    return packaged
        .getProperty("quarkus.datasource.jdbc.url")
        .replace("${coldround.data}", folder.toString());
  }
}
