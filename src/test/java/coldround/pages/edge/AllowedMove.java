package coldround.pages.edge;

import coldround.Api;
import io.restassured.path.json.JsonPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A stop of a plan that may be put on another day or to another technician, as the service says
 * when asked.
 *
 * @param from day it stands on now
 */
record AllowedMove(String stop, String from, String technician, String day) {

  /**
   * The first one of the plan.
   *
   * @throws IllegalStateException when no stop may be moved anywhere
   */
  static AllowedMove in(String plan) {
    JsonPath read = Api.asPlanner().get("/api/v1/rounds/" + plan).jsonPath();
    List<String> technicians =
        read.<String>getList("days.rounds.technician.code.flatten()").stream().distinct().toList();
    List<String> days = read.getList("days.day");
    for (AllowedMove move : wishes(read, technicians, days)) {
      if (move.allowed(plan)) {
        return move;
      }
    }
    throw new IllegalStateException("no stop of the plan may be moved");
  }

  private static List<AllowedMove> wishes(
      JsonPath plan, List<String> technicians, List<String> days) {
    List<AllowedMove> wishes = new ArrayList<>();
    for (int at = 0; at < days.size(); at++) {
      List<Map<String, Object>> rounds = plan.getList("days[" + at + "].rounds");
      for (int round = 0; round < rounds.size(); round++) {
        String its = "days[" + at + "].rounds[" + round + "]";
        String who = plan.getString(its + ".technician.code");
        for (String stop : plan.<String>getList(its + ".stops.id")) {
          for (String technician : technicians) {
            for (String day : days) {
              if (!technician.equals(who) || !day.equals(days.get(at))) {
                wishes.add(new AllowedMove(stop, days.get(at), technician, day));
              }
            }
          }
        }
      }
    }
    return wishes;
  }

  private boolean allowed(String plan) {
    return Api.asPlanner()
        .contentType("application/json")
        .body(Map.of("stop", stop, "technician", technician, "day", day))
        .post("/api/v1/rounds/" + plan + "/moves?preview=true")
        .jsonPath()
        .getBoolean("possible");
  }
}
