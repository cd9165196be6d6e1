package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StoreFaultsTest {

  /**
   * States of ISO 9075, of PostgreSQL (its manual, appendix A) and of H2 (org.h2.api.ErrorCode).
   */
  @ParameterizedTest
  @CsvSource({
    "08006, 503, store-away",
    "57P01, 503, store-away",
    "53300, 503, store-away",
    "53100, 507, no-room",
    "90020, 503, store-away",
    "90098, 503, store-away",
    "40001, 503, busy",
    "55P03, 503, busy"
  })
  void whatPassesIsToldSo(String state, int status, String kind) {
    RuntimeException fault = new RuntimeException(new SQLException("told", state));
    Problem told = StoreFaults.busy(fault).or(() -> StoreFaults.of(fault)).orElseThrow();
    assertEquals(status, told.status());
    assertEquals("urn:coldround:problem:" + kind, told.body().get("type").toString());
  }

  @Test
  void aFullDiskBehindAStoreThatWasClosedIsToldAsWhatItIs() {
    SQLException closed = new SQLException("closed", "90098");
    closed.addSuppressed(new IOException("No space left on device"));
    assertEquals(507, StoreFaults.of(closed).orElseThrow().status());
  }

  @Test
  void aFaultOfTheProgramDoesNotPass() {
    SQLException ours = new SQLException("no such column", "42703");
    assertEquals(Optional.empty(), StoreFaults.of(ours));
    assertEquals(Optional.empty(), StoreFaults.busy(ours));
  }
}
