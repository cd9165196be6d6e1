package coldround.rounds.edge;

import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** A plan as GeoJSON (RFC 7946): a point a stop, a line a round, straight from place to place. */
@ApplicationScoped
class RoundMapFile {

  // a tenth of a metre (RFC 7946, section 11.2)
  private static final int DECIMALS = 6;

  private final ObjectMapper json;

  @Inject
  RoundMapFile(ObjectMapper json) {
    this.json = json;
  }

  byte[] write(RoundPlan plan) {
    ObjectNode all = json.createObjectNode().put("type", "FeatureCollection");
    ArrayNode features = all.putArray("features");
    for (RoundPlan.Round round : plan.rounds()) {
      features.add(way(round));
      for (int i = 0; i < round.stops().size(); i++) {
        features.add(stop(round, i));
      }
    }
    try {
      return json.writeValueAsBytes(all);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ObjectNode way(RoundPlan.Round round) {
    List<Place> places = new ArrayList<>();
    places.add(round.home());
    round.stops().forEach(stop -> places.add(stop.premises().place()));
    places.add(round.end());
    places.removeIf(place -> !place.located());
    ObjectNode feature = feature(round.key());
    if (places.size() < 2) {
      feature.putNull("geometry");
    } else {
      ArrayNode line = geometry(feature, "LineString");
      places.forEach(place -> line.add(position(json.createArrayNode(), place)));
    }
    feature
        .putObject("properties")
        .put("kind", "round")
        .put("technician", round.technician())
        .put("day", round.day().toString())
        .put("leaves", RoundView.time(round.leaves(), round.zone()).toString())
        .put("returns", RoundView.time(round.returns(), round.zone()).toString())
        .put("distanceKm", RoundView.number(round.km(), 1));
    return feature;
  }

  private ObjectNode stop(RoundPlan.Round round, int index) {
    RoundPlan.Stop stop = round.stops().get(index);
    ObjectNode feature = feature(stop.call().id());
    if (stop.premises().place().located()) {
      position(geometry(feature, "Point"), stop.premises().place());
    } else {
      feature.putNull("geometry");
    }
    ObjectNode properties = feature.putObject("properties");
    properties
        .put("kind", "stop")
        .put("technician", round.technician())
        .put("day", round.day().toString())
        .put("stop", index + 1)
        .put("site", stop.premises().code())
        .put("name", stop.premises().name())
        .put("address", stop.premises().address())
        .put("begins", RoundView.time(stop.begins(), round.zone()).toString())
        .put("leaves", RoundView.time(stop.leaves(), round.zone()).toString())
        .put("travelEstimated", stop.leg().estimated());
    ArrayNode tasks = properties.putArray("tasks");
    stop.call().jobs().forEach(job -> tasks.add(job.tag() + ": " + job.kind()));
    return feature;
  }

  private ObjectNode feature(String id) {
    return json.createObjectNode().put("type", "Feature").put("id", id);
  }

  private static ArrayNode geometry(ObjectNode feature, String type) {
    return feature.putObject("geometry").put("type", type).putArray("coordinates");
  }

  private static ArrayNode position(ArrayNode into, Place place) {
    return into.add(degrees(place.longitude())).add(degrees(place.latitude()));
  }

  private static BigDecimal degrees(double value) {
    return BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP).stripTrailingZeros();
  }
}
