package coldround.access.edge;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.restassured.response.Response;
import java.util.Map;

/** A browser as far as a log-in goes: it goes where it is sent, and has cookies. */
final class ProviderVisitor {

  private String state = "";
  private Map<String, String> cookies = Map.of();

  /** All the way to the provider and back. */
  static Response loggedIn() {
    ProviderVisitor visitor = new ProviderVisitor();
    return visitor.back(visitor.sentBack());
  }

  /** The cookie that was set when it began. */
  String state() {
    return state;
  }

  /** Where the provider sends back to. */
  String sentBack() {
    return sentBack("/enter/provider");
  }

  /**
   * @param begins the link of the log-in
   */
  String sentBack(String begins) {
    Response begun =
        given().redirects().follow(false).urlEncodingEnabled(false).cookies(cookies).get(begins);
    assertEquals(302, begun.statusCode(), begun.asString());
    cookies = begun.getCookies();
    state = begun.getDetailedCookies().asList().get(0).toString();
    Response asked =
        given()
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false)
            .get(begun.getHeader("Location"));
    assertEquals(302, asked.statusCode(), asked.asString());
    return asked.getHeader("Location");
  }

  Response back(String address) {
    return given()
        .redirects()
        .follow(false)
        .urlEncodingEnabled(false)
        .cookies(cookies)
        .get(address);
  }
}
