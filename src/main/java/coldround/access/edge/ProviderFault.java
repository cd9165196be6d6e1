package coldround.access.edge;

import io.quarkus.oidc.OIDCException;
import io.quarkus.security.AuthenticationCompletionException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jose4j.jwt.consumer.ErrorCodeValidator;
import org.jose4j.jwt.consumer.ErrorCodes;
import org.jose4j.jwt.consumer.InvalidJwtException;

/**
 * Why a log-in by the provider failed, in our own words: those of the extension and the provider
 * quote tokens and claims.
 *
 * @param away the provider did not do its part, so trying again later may help
 * @param why for the log
 */
record ProviderFault(boolean away, String why) {

  /** How a token endpoint refuses (RFC 6749, 5.2). */
  private static final Pattern REFUSAL =
      Pattern.compile(
          "\"error\"\\s*:\\s*\"(invalid_request|invalid_client|invalid_grant|unauthorized_client"
              + "|unsupported_grant_type|invalid_scope)\"");

  private static final String OF_THE_CODE = "invalid_grant";

  private static final Map<Integer, String> OF_TOKENS =
      Map.ofEntries(
          Map.entry(ErrorCodes.EXPIRED, "it has expired"),
          Map.entry(ErrorCodes.EXPIRATION_MISSING, "it says no end"),
          Map.entry(ErrorCodes.EXPIRATION_TOO_FAR_IN_FUTURE, "its end is too far off"),
          Map.entry(ErrorCodes.ISSUED_AT_MISSING, "it does not say when it was made"),
          Map.entry(ErrorCodes.ISSUED_AT_INVALID_FUTURE, "it was made in the future"),
          Map.entry(ErrorCodes.ISSUED_AT_INVALID_PAST, "it was made too long ago"),
          Map.entry(ErrorCodes.NOT_YET_VALID, "it does not hold yet"),
          Map.entry(ErrorCodes.AUDIENCE_MISSING, "it says no audience"),
          Map.entry(ErrorCodes.AUDIENCE_INVALID, "its audience is not this client"),
          Map.entry(ErrorCodes.SIGNATURE_INVALID, "its signature is wrong"),
          Map.entry(ErrorCodes.SIGNATURE_MISSING, "it is not signed"),
          Map.entry(ErrorCodes.ISSUER_MISSING, "it says no issuer"),
          Map.entry(ErrorCodes.ISSUER_INVALID, "its issuer is not this provider"),
          Map.entry(ErrorCodes.SUBJECT_MISSING, "it says no subject"),
          // as the extension calls the nonce and other claims that it was told to require
          Map.entry(ErrorCodes.MISCELLANEOUS, "a claim such as the nonce is missing or another"));

  static ProviderFault of(Throwable fault) {
    List<Throwable> chain = new ArrayList<>();
    for (Throwable one = fault; one != null && !chain.contains(one); one = one.getCause()) {
      chain.add(one);
    }
    for (Throwable one : chain) {
      if (one instanceof InvalidJwtException token) {
        return new ProviderFault(false, "its ID token does not hold: " + reasons(token));
      }
    }
    for (Throwable one : chain) {
      if (one instanceof OIDCException) {
        return ofAnswer(String.valueOf(one.getMessage()));
      }
    }
    return fault instanceof AuthenticationCompletionException
        ? new ProviderFault(false, "what was sent back does not hold")
        : new ProviderFault(true, "it does not answer");
  }

  private static ProviderFault ofAnswer(String answer) {
    Matcher refusal = REFUSAL.matcher(answer);
    if (!refusal.find()) {
      return new ProviderFault(true, "it answered with a fault of its own");
    }
    String code = refusal.group(1);
    return code.equals(OF_THE_CODE)
        ? new ProviderFault(false, "what was sent back does not hold (" + code + ")")
        : new ProviderFault(
            true, "it refuses this service (" + code + "): look at the client and its secret");
  }

  private static String reasons(InvalidJwtException token) {
    return token.getErrorDetails().stream()
        .map(ErrorCodeValidator.Error::getErrorCode)
        .map(code -> OF_TOKENS.getOrDefault(code, "reason " + code + " of jose4j"))
        .collect(Collectors.toCollection(TreeSet::new))
        .stream()
        .collect(Collectors.joining(", "));
  }
}
