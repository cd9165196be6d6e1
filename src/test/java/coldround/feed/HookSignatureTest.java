package coldround.feed;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.standardwebhooks.Webhook;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signatures of web hooks. */
class HookSignatureTest {

  // test vectors of the Standard Webhooks project's own Java, Go, JavaScript, C# and PHP tests
  // (1 and 2), and one of the same key with letters beyond ASCII, computed with another HMAC
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw|msg_p5jXN8AQM9LWM0D4loKWxJek|1614265330|{\"test\": 2432232314}|v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        "whsec_plJ3nmyCDGBKInavdOK15jsl|msg_loFOjxBNrRLzqYUf|1731705121|{\"event_type\":\"ping\",\"data\":{\"success\":true}}|v1,rAvfW3dJ/X/qxhsaXPOyyCGmRKsaKWcsNccKXlIktD0=",
        "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw|msg_p5jXN8AQM9LWM0D4loKWxJek|1614265330|{\"name\":\"Café №4\"}|v1,dF1IeN4eX7vYuSIJRUI3YkLiIimaDB4qMt9rCtQhFhw="
      })
  void aSignatureIsAsPublished(String secret, String id, long time, String body, String expected) {
    assertEquals(
        expected,
        HookSignature.header(
            List.of(HookSecret.parse(secret)), id, time, body.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void theLibraryOfTheStandardAcceptsEitherOfTwoKeysAndNoThird() {
    HookSecret old = HookSecret.random();
    HookSecret fresh = HookSecret.random();
    long now = Instant.now().getEpochSecond();
    String body = "{\"name\":\"Café №4\"}";
    String signature =
        HookSignature.header(
            List.of(fresh, old), "id1", now, body.getBytes(StandardCharsets.UTF_8));
    HttpHeaders headers =
        HttpHeaders.of(
            Map.of(
                "webhook-id", List.of("id1"),
                "webhook-timestamp", List.of(Long.toString(now)),
                "webhook-signature", List.of(signature)),
            (name, value) -> true);
    assertDoesNotThrow(() -> new Webhook(old.text()).verify(body, headers));
    assertDoesNotThrow(() -> new Webhook(fresh.text()).verify(body, headers));
    assertThrows(
        Exception.class, () -> new Webhook(HookSecret.random().text()).verify(body, headers));
    assertThrows(Exception.class, () -> new Webhook(old.text()).verify(body + " ", headers));
  }

  // Standard Webhooks 1.0.0: 24 to 64 random bytes
  @Test
  void aSecretHasTheLengthThatTheStandardAsksForAndStaysOutOfLogs() {
    HookSecret secret = HookSecret.random();
    int bytes = Base64.getDecoder().decode(secret.text().substring("whsec_".length())).length;
    assertTrue(bytes >= 24 && bytes <= 64);
    assertEquals(secret.text(), HookSecret.parse(secret.text()).text());
    assertFalse(secret.toString().contains(secret.text().substring(8)));
    assertThrows(IllegalArgumentException.class, () -> HookSecret.parse("abc"));
  }
}
