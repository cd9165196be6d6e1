package coldround.app;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class SecurityHeadersTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/q/health/ready",
        "/q/metrics",
        "/q/openapi",
        "/api/v1/refrigerants",
        "/api/v1/units/none",
        "/api/v1/none",
        "/",
        "/enter",
        "/assets/none"
      })
  void everyAnswerIsWhatItsTypeSaysAndIsNotForOthers(String address) {
    for (Response answer : List.of(asPlanner().get(address), given().get(address))) {
      assertEquals(List.of("nosniff"), answer.headers().getValues("X-Content-Type-Options"));
      assertEquals(
          List.of("same-origin"), answer.headers().getValues("Cross-Origin-Resource-Policy"));
      assertNull(answer.header("Server"));
    }
  }

  @Test
  void nothingIsFramedAndScriptsComeFromHereAlone() {
    String page = asPlanner().get("/refrigerants").header("Content-Security-Policy");
    assertTrue(page.contains("frame-ancestors 'none'") && page.contains("script-src 'self'"), page);
    String answer = asPlanner().get("/api/v1/refrigerants").header("Content-Security-Policy");
    assertTrue(answer.contains("default-src 'none'"), answer);
    assertTrue(!answer.contains("script-src"), answer);
    // told over plain HTTP it would mean nothing
    assertNull(asPlanner().get("/refrigerants").header("Strict-Transport-Security"));
  }
}
