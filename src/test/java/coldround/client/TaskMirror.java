package coldround.client;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;

/**
 * Sample of a client that keeps open tasks in a database of its own, from the snapshot and then
 * from the feed. What a page says and how far it has been read are one transaction of that
 * database, so it may be killed at any time: it goes on from where it was, and a change that comes
 * twice is the same change.
 */
public final class TaskMirror implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpClient http = HttpClient.newHttpClient();
  private final URI service;
  private final String token;
  private final Connection own;

  /**
   * @param file of the database, without its ending
   */
  public TaskMirror(URI service, String token, Path file) throws SQLException {
    this.service = service;
    this.token = token;
    own = DriverManager.getConnection("jdbc:h2:file:" + file.toAbsolutePath());
    try (Statement statement = own.createStatement()) {
      statement.execute("create table if not exists place (id int primary key, feed varchar)");
      statement.execute(
          "create table if not exists task (id varchar primary key, due date,"
              + " state varchar, told varchar)");
    }
    own.setAutoCommit(false);
  }

  /** Arguments: address of the service, token, database file. */
  public static void main(String... arguments) throws Exception {
    URI service = URI.create(arguments[0]);
    try (TaskMirror mirror = new TaskMirror(service, arguments[1], Path.of(arguments[2]))) {
      while (true) {
        mirror.step(30);
      }
    }
  }

  /**
   * Reads one page.
   *
   * @param waitS how long to wait for a change, in seconds
   * @return how many changes there were
   */
  public int step(int waitS) throws IOException, InterruptedException, SQLException {
    String place = place();
    if (place == null) {
      begin();
      return 1;
    }
    HttpResponse<byte[]> answer =
        get("/api/v1/feed?limit=500&wait=" + waitS + "&after=" + encoded(place));
    if (answer.statusCode() == 410) {
      begin();
      return 1;
    }
    JsonNode page = read(answer);
    for (JsonNode event : page.get("items")) {
      apply(event);
    }
    keep(page.get("next").asText());
    return page.get("items").size();
  }

  private String place() throws SQLException {
    try (Statement statement = own.createStatement();
        ResultSet found = statement.executeQuery("select feed from place")) {
      return found.next() ? found.getString(1) : null;
    }
  }

  private void begin() throws IOException, InterruptedException, SQLException {
    try (Statement statement = own.createStatement()) {
      statement.execute("delete from task");
    }
    String cursor = null;
    String next = "";
    while (next != null) {
      JsonNode page =
          read(
              get(
                  "/api/v1/feed/snapshot?limit=500"
                      + (next.isEmpty() ? "" : "&after=" + encoded(next))));
      for (JsonNode task : page.get("items")) {
        put(task);
      }
      cursor = page.get("cursor").asText();
      next = page.get("next").isNull() ? null : page.get("next").asText();
    }
    keep(cursor);
  }

  private void keep(String cursor) throws SQLException {
    try (PreparedStatement write = own.prepareStatement("merge into place values (1, ?)")) {
      write.setString(1, cursor);
      write.execute();
    }
    own.commit();
  }

  private void apply(JsonNode event) throws SQLException {
    JsonNode task = event.get("data");
    switch (event.get("type").asText()) {
      case "coldround.task.planned", "coldround.task.changed" -> put(task);
      case "coldround.task.booked", "coldround.task.unbooked" ->
          change("update task set state = ? where id = ?", task.get("state").asText(), task);
      case "coldround.task.completed", "coldround.task.withdrawn" ->
          change("delete from task where ? is not null and id = ?", "", task);
      default -> {
        // rounds and scores are not mirrored, and what is unknown may be passed over
      }
    }
  }

  private void put(JsonNode task) throws SQLException {
    try (PreparedStatement write = own.prepareStatement("merge into task values (?, ?, ?, ?)")) {
      write.setString(1, task.get("id").asText());
      write.setString(2, task.get("due").asText());
      write.setString(3, task.get("state").asText());
      write.setString(4, task.toString());
      write.execute();
    }
  }

  private void change(String sql, String state, JsonNode task) throws SQLException {
    try (PreparedStatement write = own.prepareStatement(sql)) {
      write.setString(1, state);
      write.setString(2, task.get("id").asText());
      write.execute();
    }
  }

  private HttpResponse<byte[]> get(String address) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(service.resolve(address))
            .header("Authorization", "Bearer " + token)
            .timeout(Duration.ofSeconds(90))
            .build();
    return http.send(request, HttpResponse.BodyHandlers.ofByteArray());
  }

  private static JsonNode read(HttpResponse<byte[]> answer) throws IOException {
    if (answer.statusCode() != 200) {
      throw new IOException(
          answer.statusCode() + " " + new String(answer.body(), StandardCharsets.UTF_8));
    }
    return JSON.readTree(answer.body());
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** The mirror's own database, to be asked. */
  Connection database() {
    return own;
  }

  @Override
  public void close() throws SQLException {
    own.close();
  }
}
