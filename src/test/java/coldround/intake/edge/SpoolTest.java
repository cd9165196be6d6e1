package coldround.intake.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.http.Problem;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SpoolTest {

  private static final byte[] TEN = "customer\nX".getBytes();

  @Test
  void aFileUpToTheLimitIsKeptUntilItIsDone() throws Exception {
    Path file;
    try (Spool spool = Spool.of(new ByteArrayInputStream(TEN), 10)) {
      file = spool.file();
      assertEquals("customer\nX", Files.readString(file));
    }
    assertFalse(Files.exists(file));
  }

  @Test
  void aLargerOneIsRefusedWithTheLimitAndTheSetting() {
    Problem problem = assertThrows(Problem.class, () -> Spool.of(new ByteArrayInputStream(TEN), 9));
    assertEquals(413, problem.status());
    assertTrue(problem.getMessage().contains("at most 9 bytes"), problem.getMessage());
    assertTrue(problem.getMessage().contains("coldround.upload.most-bytes"));
  }
}
