package coldround.access.edge;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import org.jose4j.jwk.RsaJsonWebKey;
import org.jose4j.jwk.RsaJwkGenerator;
import org.jose4j.jws.AlgorithmIdentifiers;
import org.jose4j.jws.JsonWebSignature;
import org.jose4j.jwt.JwtClaims;
import org.jose4j.jwt.NumericDate;
import org.jose4j.lang.JoseException;

/**
 * A provider of log-ins after OpenID Connect Core 1.0, Discovery 1.0 and RFC 7636, with one person
 * at its door whom it lets in without asking, and with faults to order.
 */
public class OpenIdProvider implements QuarkusTestResourceLifecycleManager {

  static final String CLIENT = "coldround-pages";
  static final String SECRET = "a-secret-of-the-client-that-is-long-enough-for-any-key";

  /** Whom the next log-in is of, and what is done to what is said of them. */
  static final Map<String, Object> PERSON = new ConcurrentHashMap<>();

  static volatile Consumer<JwtClaims> bent = claims -> {};
  static volatile boolean foreignKey;
  static volatile String denied = "";
  static volatile int tokenFault;
  static volatile String tokenError = "server_error";

  /** What went over the wire and is nobody's business. */
  static final List<String> SECRETS =
      java.util.Collections.synchronizedList(new java.util.ArrayList<>());

  private record Asked(String redirect, String challenge, String nonce) {}

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Map<String, Asked> codes = new ConcurrentHashMap<>();
  private HttpServer server;
  private RsaJsonWebKey key;
  private RsaJsonWebKey another;

  /** As it is when nothing is wrong. */
  static void honest(String email) {
    PERSON.clear();
    PERSON.put("sub", "248289761001");
    PERSON.put("email", email);
    PERSON.put("email_verified", true);
    bent = claims -> {};
    foreignKey = false;
    denied = "";
    tokenFault = 0;
    tokenError = "server_error";
  }

  @Override
  public Map<String, String> start() {
    try {
      key = RsaJwkGenerator.generateJwk(2048);
      key.setKeyId("first");
      another = RsaJwkGenerator.generateJwk(2048);
      another.setKeyId("first");
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (JoseException e) {
      throw new IllegalStateException(e);
    }
    server.createContext("/.well-known/openid-configuration", call -> json(call, 200, metadata()));
    server.createContext(
        "/keys",
        call ->
            json(
                call,
                200,
                Map.of(
                    "keys",
                    List.of(
                        key.toParams(org.jose4j.jwk.JsonWebKey.OutputControlLevel.PUBLIC_ONLY)))));
    server.createContext("/authorize", this::authorize);
    server.createContext("/token", this::token);
    server.createContext("/end", call -> json(call, 200, Map.of("ended", true)));
    server.start();
    return Map.of(
        "quarkus.oidc.auth-server-url", issuer(),
        "quarkus.oidc.client-id", CLIENT,
        "quarkus.oidc.credentials.secret", SECRET);
  }

  @Override
  public void stop() {
    server.stop(0);
  }

  // by number where the service is called by name: two sites to a browser
  private String issuer() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  private Map<String, Object> metadata() {
    return Map.of(
        "issuer", issuer(),
        "authorization_endpoint", issuer() + "/authorize",
        "token_endpoint", issuer() + "/token",
        "jwks_uri", issuer() + "/keys",
        "end_session_endpoint", issuer() + "/end",
        "response_types_supported", List.of("code"),
        "subject_types_supported", List.of("public"),
        "id_token_signing_alg_values_supported", List.of("RS256"),
        "code_challenge_methods_supported", List.of("S256"));
  }

  private void authorize(HttpExchange call) throws IOException {
    Map<String, String> asked = form(call.getRequestURI().getRawQuery());
    boolean whole =
        "code".equals(asked.get("response_type"))
            && CLIENT.equals(asked.get("client_id"))
            && List.of(asked.get("scope").split(" ")).contains("openid")
            && "S256".equals(asked.get("code_challenge_method"))
            && asked.getOrDefault("code_challenge", "").length() == 43
            && asked.containsKey("nonce");
    if (!whole) {
      json(call, 400, Map.of("error", "invalid_request"));
      return;
    }
    String code = "code-" + UUID.randomUUID();
    SECRETS.add(code);
    codes.put(
        code,
        new Asked(asked.get("redirect_uri"), asked.get("code_challenge"), asked.get("nonce")));
    String what =
        denied.isEmpty() ? "code=" + code : "error=" + denied + "&error_description=No%20entry";
    String state = URLEncoder.encode(asked.get("state"), StandardCharsets.UTF_8);
    call.getResponseHeaders()
        .add("Location", asked.get("redirect_uri") + "?" + what + "&state=" + state);
    call.sendResponseHeaders(302, -1);
    call.close();
  }

  private void token(HttpExchange call) throws IOException {
    if (tokenFault != 0) {
      json(
          call,
          tokenFault,
          tokenError.isEmpty()
              ? "of nobody's business"
              : Map.of("error", tokenError, "error_description", "of nobody's business"));
      return;
    }
    Map<String, String> sent =
        form(new String(call.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
    String basic =
        Base64.getEncoder()
            .encodeToString((CLIENT + ":" + SECRET).getBytes(StandardCharsets.UTF_8));
    if (!("Basic " + basic).equals(call.getRequestHeaders().getFirst("Authorization"))) {
      json(call, 401, Map.of("error", "invalid_client"));
      return;
    }
    // a code counts once
    Asked asked = codes.remove(sent.getOrDefault("code", ""));
    if (asked == null
        || !"authorization_code".equals(sent.get("grant_type"))
        || !asked.redirect().equals(sent.get("redirect_uri"))
        || !asked.challenge().equals(challenge(sent.getOrDefault("code_verifier", "")))) {
      json(call, 400, Map.of("error", "invalid_grant"));
      return;
    }
    String access = "access-" + UUID.randomUUID();
    String refresh = "refresh-" + UUID.randomUUID();
    String id = idToken(asked.nonce());
    SECRETS.addAll(List.of(access, refresh, id, sent.get("code_verifier")));
    json(
        call,
        200,
        Map.of(
            "access_token", access,
            "refresh_token", refresh,
            "token_type", "Bearer",
            "expires_in", 300,
            "id_token", id));
  }

  private String idToken(String nonce) {
    try {
      JwtClaims claims = new JwtClaims();
      claims.setIssuer(issuer());
      claims.setAudience(CLIENT);
      claims.setIssuedAtToNow();
      claims.setExpirationTimeMinutesInTheFuture(5);
      claims.setClaim("nonce", nonce);
      PERSON.forEach(claims::setClaim);
      bent.accept(claims);
      JsonWebSignature signature = new JsonWebSignature();
      signature.setPayload(claims.toJson());
      signature.setKey(foreignKey ? another.getPrivateKey() : key.getPrivateKey());
      signature.setKeyIdHeaderValue("first");
      signature.setAlgorithmHeaderValue(AlgorithmIdentifiers.RSA_USING_SHA256);
      return signature.getCompactSerialization();
    } catch (JoseException e) {
      throw new IllegalStateException(e);
    }
  }

  static NumericDate secondsAgo(long seconds) {
    NumericDate moment = NumericDate.now();
    moment.addSeconds(-seconds);
    return moment;
  }

  private static String challenge(String verifier) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(verifier.getBytes(StandardCharsets.US_ASCII));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(hash);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, String> form(String text) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String field : text.split("&")) {
      String[] parts = field.split("=", 2);
      fields.put(
          parts[0], URLDecoder.decode(parts.length < 2 ? "" : parts[1], StandardCharsets.UTF_8));
    }
    return fields;
  }

  private static void json(HttpExchange call, int status, Object body) throws IOException {
    byte[] bytes = JSON.writeValueAsBytes(body);
    call.getResponseHeaders().add("Content-Type", "application/json");
    call.sendResponseHeaders(status, bytes.length);
    call.getResponseBody().write(bytes);
    call.close();
  }
}
