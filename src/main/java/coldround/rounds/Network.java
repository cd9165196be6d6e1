package coldround.rounds;

import coldround.rounds.search.Matrix;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The places of a plan and the drives between them. */
final class Network {

  private final Travel travel;
  private final double setUpMinutes;
  private final List<Place> places = new ArrayList<>();
  private final Map<String, Integer> index = new HashMap<>();
  private Leg[][] legs;

  /**
   * @param setUpMinutes from stopping the van at a site to starting work
   */
  Network(Travel travel, double setUpMinutes) {
    this.travel = travel;
    this.setUpMinutes = setUpMinutes;
  }

  int add(Place place) {
    return index.computeIfAbsent(
        place.code(),
        code -> {
          places.add(place);
          return places.size() - 1;
        });
  }

  boolean has(Place place) {
    return index.containsKey(place.code());
  }

  void measure() {
    legs = new Leg[places.size()][places.size()];
    for (int from = 0; from < legs.length; from++) {
      for (int to = 0; to < legs.length; to++) {
        legs[from][to] = travel.between(places.get(from), places.get(to));
      }
    }
  }

  Leg leg(Place from, Place to) {
    return legs[index.get(from.code())][index.get(to.code())];
  }

  double setUp(Place from, Place to) {
    return from.code().equals(to.code()) ? 0 : setUpMinutes;
  }

  Matrix distance() {
    double[][] km = new double[legs.length][legs.length];
    for (int from = 0; from < legs.length; from++) {
      for (int to = 0; to < legs.length; to++) {
        km[from][to] = legs[from][to].km();
      }
    }
    return Matrix.of(km);
  }

  /** Driving, and at a site what it takes until work can start. */
  Matrix minutes() {
    double[][] minutes = new double[legs.length][legs.length];
    for (int from = 0; from < legs.length; from++) {
      for (int to = 0; to < legs.length; to++) {
        boolean site = from != to && places.get(to).code().contains("/");
        minutes[from][to] = legs[from][to].minutes() + (site ? setUpMinutes : 0);
      }
    }
    return Matrix.of(minutes);
  }

  /** Says how many drives had to be estimated although times were imported. */
  void tell(List<Note> notes) {
    if (!travel.trouble().isEmpty()) {
      String message =
          "the source of travel times failed: "
              + travel.trouble()
              + ". What it has not told is estimated; plan again when it answers.";
      notes.add(new Note("travel-source-failed", "travel", message));
    }
    long all = 0;
    long estimated = 0;
    for (int from = 0; from < legs.length; from++) {
      for (int to = 0; to < legs.length; to++) {
        all += from == to ? 0 : 1;
        estimated += from != to && legs[from][to].known() && legs[from][to].estimated() ? 1 : 0;
      }
    }
    if (estimated > 0) {
      String code = travel.hasMatrix() ? "travel-times-incomplete" : "travel-times-estimated";
      notes.add(
          new Note(
              code,
              "travel",
              estimated
                  + " of "
                  + all
                  + " drives between these places have no imported time and are estimated from"
                  + " coordinates."));
    }
  }
}
