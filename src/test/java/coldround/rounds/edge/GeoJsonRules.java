package coldround.rounds.edge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The rules of RFC 7946 (sections in the comments, from memory) that a collection can break. */
final class GeoJsonRules {

  private final List<String> broken = new ArrayList<>();
  private final Set<Object> ids = new HashSet<>();

  private GeoJsonRules() {}

  static List<String> broken(Map<String, Object> object) {
    GeoJsonRules rules = new GeoJsonRules();
    rules.collection(object);
    return rules.broken;
  }

  private void expect(boolean condition, String otherwise) {
    if (!condition) {
      broken.add(otherwise);
    }
  }

  // 3.3: a FeatureCollection has an array of features; 4: no crs any more
  private void collection(Map<String, Object> object) {
    expect("FeatureCollection".equals(object.get("type")), "type of the collection");
    expect(!object.containsKey("crs"), "crs is gone");
    expect(object.get("features") instanceof List, "features is an array");
    for (Object feature : (List<?>) object.get("features")) {
      feature((Map<?, ?>) feature);
    }
  }

  // 3.2: a Feature has a geometry and properties, each an object or null; its id is text or number
  private void feature(Map<?, ?> feature) {
    expect("Feature".equals(feature.get("type")), "type of a feature");
    expect(feature.containsKey("geometry") && feature.containsKey("properties"), "members");
    expect(feature.get("properties") instanceof Map, "properties");
    Object id = feature.get("id");
    expect(id instanceof String || id instanceof Number, "id");
    expect(ids.add(id), "id " + id + " stands twice");
    // 7.1: members of one kind of object are no members of another
    expect(!feature.containsKey("coordinates") && !feature.containsKey("features"), "foreign");
    if (feature.get("geometry") instanceof Map<?, ?> geometry) {
      geometry(geometry);
    } else {
      expect(feature.get("geometry") == null, "geometry is an object or null");
    }
  }

  // 3.1.2 and 3.1.4: a Point is one position, a LineString two or more
  private void geometry(Map<?, ?> geometry) {
    List<?> coordinates = (List<?>) geometry.get("coordinates");
    if ("Point".equals(geometry.get("type"))) {
      position(coordinates);
    } else {
      expect("LineString".equals(geometry.get("type")), "type " + geometry.get("type"));
      expect(coordinates.size() >= 2, "a line has two positions");
      coordinates.forEach(position -> position((List<?>) position));
    }
  }

  // 3.1.1: longitude, latitude; 4: WGS 84 in degrees
  private void position(List<?> position) {
    expect(position.size() == 2 || position.size() == 3, "numbers of a position");
    expect(Math.abs(((Number) position.get(0)).doubleValue()) <= 180, "longitude");
    expect(Math.abs(((Number) position.get(1)).doubleValue()) <= 90, "latitude");
  }
}
