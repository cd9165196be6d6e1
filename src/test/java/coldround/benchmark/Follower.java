package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A reader of the feed that waits for changes, on whichever instance it comes to. */
final class Follower implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Balanced service;
  private final Thread thread = new Thread(this::follow);
  private final List<String> ids = new ArrayList<>();
  private final List<String> refused = new ArrayList<>();
  private String cursor;
  private volatile boolean open = true;

  /**
   * @param cursor from which it follows
   */
  Follower(Balanced service, String cursor) {
    this.service = service;
    this.cursor = cursor;
    thread.start();
  }

  private void follow() {
    try {
      while (open && refused.isEmpty()) {
        Balanced.Answer answer =
            service.call("GET", "/api/v1/feed?limit=500&wait=5&after=" + cursor, null);
        if (answer.status() == 200) {
          JsonNode page = JSON.readTree(answer.body());
          page.path("items").forEach(event -> ids.add(event.path("id").asText()));
          cursor = page.path("next").asText();
        } else {
          refused.add(answer.toString());
        }
      }
    } catch (IOException e) {
      refused.add(e.toString());
    }
  }

  /**
   * Ends, and holds what it was told against the feed.
   *
   * @param feed ids of all changes behind its first cursor
   * @return how many it was told
   */
  int check(List<String> feed) throws InterruptedException {
    close();
    Harm.check(refused.isEmpty(), "a reader of the feed was answered " + refused);
    Harm.check(
        ids.size() <= feed.size() && ids.equals(feed.subList(0, ids.size())),
        "what a reader was told is not the feed in its order");
    return ids.size();
  }

  @Override
  public void close() throws InterruptedException {
    open = false;
    thread.join();
  }
}
