package coldround.rounds.edge;

import coldround.rounds.Order;
import coldround.rounds.Place;
import coldround.rounds.Travel;
import coldround.rounds.edge.DurationsSource.Answer;
import coldround.rounds.edge.DurationsSource.Failed;
import coldround.rounds.edge.DurationsSource.Point;
import io.quarkus.logging.Log;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Drives from an outside source, each asked once and kept. A source that fails is left alone for
 * the rest of that plan: what it has not told is estimated, and the plan says so.
 */
@ApplicationScoped
class AskedDrives {

  private final DurationsSource source;
  private final KeptDrives kept;
  private final Clock clock;
  private final int mostPlaces;
  private final Duration patience;
  private final Duration keptFor;

  @Inject
  AskedDrives(
      DurationsSource source,
      KeptDrives kept,
      Clock clock,
      @ConfigProperty(name = "coldround.travel.most-places", defaultValue = "100") int mostPlaces,
      @ConfigProperty(name = "coldround.travel.patience", defaultValue = "PT6S") Duration patience,
      @ConfigProperty(name = "coldround.travel.kept", defaultValue = "P30D") Duration keptFor) {
    this.source = source;
    this.kept = kept;
    this.clock = clock;
    this.mostPlaces = Math.max(2, mostPlaces);
    this.patience = patience;
    this.keptFor = keptFor;
  }

  /** Adds what is kept, without asking: nobody waits for an emergency to be placed. */
  void recall(Travel travel, Order order) {
    if (source.named()) {
      kept.into(travel, order.places(), name(), clock.instant().minus(keptFor));
    }
  }

  /** Adds what is kept and asks for the rest. */
  void fill(Travel travel, Order order) {
    if (!source.named()) {
      return;
    }
    recall(travel, order);
    List<Place> places = order.places().stream().filter(Place::located).toList();
    Instant until = clock.instant().plus(patience);
    int side = Math.max(1, mostPlaces / 2);
    try {
      for (int from = 0; from < places.size(); from += side) {
        for (int to = 0; to < places.size(); to += side) {
          block(travel, part(places, from, side), part(places, to, side), until);
        }
      }
    } catch (Failed e) {
      Log.warn("the source of travel times failed: " + e.getMessage());
      travel.sourceFailed(e.getMessage());
    }
  }

  private static List<Place> part(List<Place> places, int from, int side) {
    return places.subList(from, Math.min(places.size(), from + side));
  }

  private void block(Travel travel, List<Place> from, List<Place> to, Instant until) throws Failed {
    List<Place> sources =
        from.stream().filter(a -> to.stream().anyMatch(b -> travel.wants(a, b))).toList();
    if (sources.isEmpty()) {
      return;
    }
    List<Point> points = new ArrayList<>();
    sources.forEach(place -> points.add(point(place)));
    to.forEach(place -> points.add(point(place)));
    Duration left = Duration.between(clock.instant(), until);
    if (left.isNegative() || left.isZero()) {
      throw new Failed("it had not told all drives after " + patience.toSeconds() + " s");
    }
    Answer answer = source.ask(points, sources.size(), left);
    List<KeptDrives.Drive> drives = new ArrayList<>();
    for (int a = 0; a < sources.size(); a++) {
      for (int b = 0; b < to.size(); b++) {
        Double minutes = answer.minutes()[a][b];
        if (minutes != null && travel.wants(sources.get(a), to.get(b))) {
          Double km = answer.km()[a][b];
          travel.told(sources.get(a), to.get(b), minutes, km);
          drives.add(new KeptDrives.Drive(key(sources.get(a)), key(to.get(b)), minutes, km));
        }
      }
    }
    kept.keep(name(), drives, clock.instant());
  }

  private String name() {
    return UUID.nameUUIDFromBytes(source.template().getBytes(StandardCharsets.UTF_8)).toString();
  }

  private static Point point(Place place) {
    return new Point(place.latitude(), place.longitude());
  }

  /** Coordinates to a metre: a place that moves is asked anew. */
  static String key(Place place) {
    return String.format(Locale.ROOT, "%.5f,%.5f", place.latitude(), place.longitude());
  }
}
