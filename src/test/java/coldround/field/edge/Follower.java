package coldround.field.edge;

import static coldround.Api.asPlanner;

import io.restassured.path.json.JsonPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Follows the feed from where it stood when this was made. */
final class Follower {

  private String cursor = "";

  Follower() {
    read();
  }

  /** All changes since the last reading. */
  final List<Map<String, Object>> read() {
    List<Map<String, Object>> all = new ArrayList<>();
    while (true) {
      JsonPath page =
          asPlanner()
              .queryParam("after", cursor)
              .queryParam("limit", 500)
              .get("/api/v1/feed")
              .jsonPath();
      List<Map<String, Object>> items = page.getList("items");
      cursor = page.getString("next");
      if (items.isEmpty()) {
        return all;
      }
      all.addAll(items);
    }
  }

  /** Those about one task. */
  List<Map<String, Object>> read(String subject) {
    return read().stream().filter(change -> subject.equals(change.get("subject"))).toList();
  }
}
