package coldround.rounds.edge;

import coldround.http.Problem.FieldError;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Reads where days start and end from a request and collects all that is wrong with it. */
final class Stations {

  private static final String SHAPE =
      "is an object such as {\"T1\": \"HARBOR/DOCK-ST\", \"T2\": {\"latitude\": 45.5,"
          + " \"longitude\": -122.6}}";

  private final JsonNode body;
  private final List<FieldError> errors;

  Stations(JsonNode body, List<FieldError> errors) {
    this.body = body;
    this.errors = errors;
  }

  Map<String, Station> read(String field, Set<String> technicians, Set<String> places) {
    JsonNode node = body.path(field);
    Map<String, Station> stations = new TreeMap<>();
    if (!node.isMissingNode() && !node.isNull() && !node.isObject()) {
      errors.add(new FieldError(field, node.toString(), SHAPE));
    }
    node.fields()
        .forEachRemaining(
            entry -> {
              String at = field + "." + entry.getKey();
              if (!technicians.contains(entry.getKey())) {
                errors.add(new FieldError(at, entry.getKey(), "is not the code of a technician"));
              }
              Station station = station(at, entry.getValue(), places);
              if (station != null) {
                stations.put(entry.getKey(), station);
              }
            });
    return stations;
  }

  private Station station(String at, JsonNode node, Set<String> places) {
    if (node.isTextual() && places.contains(node.asText())) {
      return new Station(node.asText(), null, null);
    }
    if (node.isTextual()) {
      String known = "is neither customer/site nor the code of a technician";
      errors.add(new FieldError(at, node.asText(), known));
      return null;
    }
    double north = degrees(node.path("latitude"), 90);
    double east = degrees(node.path("longitude"), 180);
    if (Double.isNaN(north) || Double.isNaN(east)) {
      String shape = "is a place such as HARBOR/DOCK-ST, or latitude and longitude in degrees";
      errors.add(new FieldError(at, node.toString(), shape));
      return null;
    }
    return new Station(null, north, east);
  }

  private static double degrees(JsonNode node, double most) {
    boolean good = node.isNumber() && Math.abs(node.asDouble()) <= most;
    return good ? node.asDouble() : Double.NaN;
  }
}
