package coldround.rounds.search.engine;

import coldround.rounds.search.Matrix;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Window;
import java.util.Comparator;
import java.util.List;

/** Turns the records of a problem into the arrays of a {@link Model}. */
final class ModelArrays {

  final int nodes;
  final double[] service;
  final double[] demand;
  final double[] price;
  final boolean[] mandatory;
  final int[] windowFrom;
  final double[] opens;
  final double[] closes;
  final boolean windowsBind;
  private final int[] placeOfNode;

  ModelArrays(Problem problem, Fleet fleet) {
    List<Stop> stops = problem.stops();
    int count = stops.size();
    service = stops.stream().mapToDouble(Stop::serviceMinutes).toArray();
    demand = stops.stream().mapToDouble(Stop::demand).toArray();
    price = stops.stream().mapToDouble(Stop::priceLeftOut).toArray();
    mandatory = new boolean[count];
    windowFrom = new int[count + 1];
    List<List<Window>> windows = stops.stream().map(ModelArrays::usable).toList();
    int total = windows.stream().mapToInt(List::size).sum();
    opens = new double[total];
    closes = new double[total];
    for (int s = 0, w = 0; s < count; s++) {
      mandatory[s] = stops.get(s).mandatory();
      for (Window window : windows.get(s)) {
        opens[w] = window.opens();
        closes[w++] = window.closes();
      }
      windowFrom[s + 1] = w;
    }
    windowsBind = windows.stream().flatMap(List::stream).anyMatch(w -> !w.equals(Window.ALWAYS));
    placeOfNode = places(stops, fleet);
    nodes = placeOfNode.length;
  }

  /** Windows that have a minute, in order of time. */
  private static List<Window> usable(Stop stop) {
    return stop.windows().stream()
        .filter(window -> !window.neverOpen())
        .sorted(Comparator.comparingDouble(Window::opens).thenComparingDouble(Window::closes))
        .toList();
  }

  private static int[] places(List<Stop> stops, Fleet fleet) {
    int[] places = new int[stops.size() + fleet.depotPlaces.length];
    for (int s = 0; s < stops.size(); s++) {
      places[s] = stops.get(s).place();
    }
    System.arraycopy(fleet.depotPlaces, 0, places, stops.size(), fleet.depotPlaces.length);
    return places;
  }

  double[] flat(Matrix matrix) {
    double[] flat = new double[nodes * nodes];
    for (int from = 0; from < nodes; from++) {
      for (int to = 0; to < nodes; to++) {
        double value = matrix.between(placeOfNode[from], placeOfNode[to]);
        flat[from * nodes + to] = value >= 0 && value < Model.NO_WAY ? value : Model.NO_WAY;
      }
    }
    return flat;
  }

  /** The matrix seen from the other end; the same array if there is no difference. */
  double[] transposed(double[] flat) {
    double[] back = new double[flat.length];
    boolean same = true;
    for (int from = 0; from < nodes; from++) {
      for (int to = 0; to < nodes; to++) {
        back[to * nodes + from] = flat[from * nodes + to];
        same &= flat[to * nodes + from] == flat[from * nodes + to];
      }
    }
    return same ? flat : back;
  }
}
