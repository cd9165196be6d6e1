package coldround.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What has been answered is in the embedded database, also when the service is killed at once. */
class KilledStoreTest {

  private static final int COMMITS = 300;
  private static final int COPIES = 5;
  private static final String FILE = "coldround.mv.db";

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
    Path said = folder.resolve("said");
    Process writer = writer(said);
    while (answered(said) < COMMITS && writer.isAlive()) {
      Thread.sleep(5);
    }
    writer.destroyForcibly().waitFor();
    int answered = answered(said);
    assertTrue(answered >= COMMITS, "commits: " + answered);
    int found = found(url());
    assertTrue(found >= answered, found + " of " + answered);
  }

  private Process writer(Path said) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Writer.class.getName(),
            url())
        .redirectOutput(said.toFile())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }

  /**
   * A copy of the file that is taken while commits are being written to it, as a disk has it after
   * the power was cut: what had been answered when the copy began is in it, and nothing by half.
   */
  @Test
  void aCopyOfTheFileThatIsBeingWrittenOpensWithAllThatWasAnswered() throws Exception {
    Path said = folder.resolve("said");
    Process writer = writer(said);
    List<Integer> answered = new ArrayList<>();
    for (int i = 1; i <= COPIES; i++) {
      while (answered(said) < i * COMMITS / COPIES && writer.isAlive()) {
        Thread.sleep(1);
      }
      answered.add(answered(said));
      Path copy = Files.createDirectories(folder.resolve("copy" + i)).resolve(FILE);
      Files.copy(folder.resolve(FILE), copy);
    }
    writer.destroyForcibly().waitFor();
    for (int i = 1; i <= COPIES; i++) {
      Path copy = folder.resolve("copy" + i);
      int found = found(url().replace(folder.toString(), copy.toString()));
      assertTrue(found >= answered.get(i - 1), found + " of " + answered.get(i - 1));
    }
    tornAtItsEnd(answered.get(0));
  }

  /** The last block that was being written may be there in part. */
  private void tornAtItsEnd(int answered) throws Exception {
    Path torn = Files.createDirectories(folder.resolve("torn"));
    byte[] whole = Files.readAllBytes(folder.resolve(FILE));
    Files.write(torn.resolve(FILE), Arrays.copyOf(whole, whole.length - 1000));
    int found = found(url().replace(folder.toString(), torn.toString()));
    assertTrue(found >= answered, found + " of " + answered);
  }

  /** Rows from the first to the last without a gap. */
  private static int found(String url) throws Exception {
    try (Connection store = DriverManager.getConnection(url, "sa", "");
        Statement statement = store.createStatement();
        ResultSet found = statement.executeQuery("select count(*), max(id) from told")) {
      found.next();
      assertEquals(found.getInt(1), found.getInt(2), "no gap");
      return found.getInt(1);
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
