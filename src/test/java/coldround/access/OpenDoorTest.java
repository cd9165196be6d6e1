package coldround.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OpenDoorTest {

  @ParameterizedTest
  @CsvSource({
    "127.0.0.1, enabled, false, starts",
    "127.8.9.1, enabled, false, starts",
    "::1, enabled, false, starts",
    "localhost, enabled, false, starts",
    "0.0.0.0, enabled, false, refuses",
    "::, enabled, false, refuses",
    "192.0.2.7, enabled, false, refuses",
    "no-such-host.invalid, enabled, false, refuses",
    "0.0.0.0, ENABLED, false, refuses",
    "0.0.0.0, redirect, false, starts",
    "0.0.0.0, disabled, false, starts",
    "0.0.0.0, enabled, true, warns",
    "127.0.0.1, enabled, true, starts"
  })
  void plainHttpBeyondThisMachineHasToBeMeant(
      String host, String insecure, boolean meant, String outcome) {
    if (outcome.equals("refuses")) {
      OpenDoor refusal = assertThrows(OpenDoor.class, () -> OpenDoor.check(host, insecure, meant));
      assertTrue(refusal.getMessage().contains("coldround.plain-http=true"));
    } else {
      assertEquals(outcome.equals("warns"), OpenDoor.check(host, insecure, meant).isPresent());
    }
  }
}
