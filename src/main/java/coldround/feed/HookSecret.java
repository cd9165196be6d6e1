package coldround.feed;

import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;

/**
 * Key that a subscriber and this service share, written as Standard Webhooks 1.0.0 writes it:
 * "whsec_" and base64.
 */
public final class HookSecret {

  private static final String PREFIX = "whsec_";
  // the specification asks for 24 to 64
  private static final int BYTES = 32;

  private final byte[] key;

  private HookSecret(byte[] key) {
    this.key = key;
  }

  public static HookSecret random() {
    byte[] key = new byte[BYTES];
    new SecureRandom().nextBytes(key);
    return new HookSecret(key);
  }

  /**
   * @throws IllegalArgumentException for a text that is none
   */
  public static HookSecret parse(String text) {
    if (!text.startsWith(PREFIX)) {
      throw new IllegalArgumentException("a secret begins with " + PREFIX);
    }
    return new HookSecret(Base64.getDecoder().decode(text.substring(PREFIX.length())));
  }

  public String text() {
    return PREFIX + Base64.getEncoder().encodeToString(key);
  }

  byte[] key() {
    return Arrays.copyOf(key, key.length);
  }

  /** Keeps it out of logs. */
  @Override
  public String toString() {
    return PREFIX + "…";
  }
}
