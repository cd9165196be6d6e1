package coldround.http;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Map;

/** A database on disk, written as that of the packaged service is. */
public class FileStore implements QuarkusTestProfile {
  @Override
  public Map<String, String> getConfigOverrides() {
    try {
      return Map.of(
          "quarkus.datasource.jdbc.url",
          "jdbc:h2:file:"
              + Files.createTempDirectory("coldround-kept")
              + "/coldround;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH;"
              + "WRITE_DELAY=0");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
