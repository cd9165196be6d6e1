package coldround.feed;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Collection;
import java.util.stream.Collectors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Signature of a message by Standard Webhooks 1.0.0: v1 is HMAC-SHA256 over id.timestamp.body. */
public final class HookSignature {

  private static final String HMAC = "HmacSHA256";

  private HookSignature() {}

  /** One signature for each secret, as the header webhook-signature lists them. */
  public static String header(
      Collection<HookSecret> secrets, String id, long unixSeconds, byte[] body) {
    return secrets.stream()
        .map(secret -> "v1," + sign(secret, id, unixSeconds, body))
        .collect(Collectors.joining(" "));
  }

  private static String sign(HookSecret secret, String id, long unixSeconds, byte[] body) {
    try {
      Mac mac = Mac.getInstance(HMAC);
      mac.init(new SecretKeySpec(secret.key(), HMAC));
      mac.update((id + "." + unixSeconds + ".").getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(mac.doFinal(body));
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException(e);
    }
  }
}
