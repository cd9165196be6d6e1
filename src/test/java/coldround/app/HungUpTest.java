package coldround.app;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.Logged;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.Socket;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Callers who go away while they still owe half of what they began to send. */
@QuarkusTest
class HungUpTest {

  @TestHTTPResource URL service;

  @ParameterizedTest
  @CsvSource({
    "/api/v1/imports/customers, text/csv, true",
    "/api/v1/imports/customers, text/csv, false",
    "/api/v1/visits, application/json, true",
    "/api/v1/visits, application/json, false"
  })
  void whoHangsUpIsOneLineInTheLogAndNothingIsKept(String path, String type, boolean reset)
      throws Exception {
    try (Logged logged = new Logged()) {
      long end = System.nanoTime() + 20_000_000_000L;
      // one who is gone before anybody has begun to read is nobody's business
      for (int i = 0; !logged.tells("a caller hung up") && System.nanoTime() < end; i++) {
        if (i % 50 == 0) {
          hangUp(path, type, reset);
        }
        Thread.sleep(20);
      }
      assertTrue(logged.tells("a caller hung up"), "told");
      assertEquals(List.of(), logged.traces());
    }
    assertFalse(asPlanner().get("/api/v1/exports/customers.csv").asString().contains("HUNGUP"));
  }

  private void hangUp(String path, String type, boolean reset) throws IOException {
    try (Socket socket = new Socket(service.getHost(), service.getPort())) {
      String head =
          "POST %s HTTP/1.1\r\nHost: localhost\r\nContent-Type: %s\r\nContent-Length: 100000\r\n"
              + "Authorization: Bearer %s\r\n\r\n";
      String sent = head.formatted(path, type, Api.TOKEN) + "customer,name\nHUNGUP,Gone\n";
      socket.getOutputStream().write(sent.getBytes(StandardCharsets.UTF_8));
      socket.getOutputStream().flush();
      if (reset) {
        socket.setSoLinger(true, 0);
      }
    }
  }
}
