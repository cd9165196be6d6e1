package coldround.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/**
 * A bearer token or session key. Its text is never stored: only the SHA-256 of it, which suffices
 * for a secret of 256 random bits.
 */
public record Secret(String text) {

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int BYTES = 32;
  private static final int PREFIX = 8;

  /** A new one of 256 random bits. */
  public static Secret random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return new Secret("cr_" + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
  }

  /** SHA-256 in hexadecimal. */
  public String hash() {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Enough of it to know it by, far too little to guess the rest. */
  public String prefix() {
    return text.substring(0, Math.min(PREFIX, text.length() / 2));
  }

  /** Keeps the secret out of logs. */
  @Override
  public String toString() {
    return "secret " + prefix() + "…";
  }
}
