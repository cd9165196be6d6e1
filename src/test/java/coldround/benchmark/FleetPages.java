package coldround.benchmark;

import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Place;
import coldround.scoring.FleetList.Search;
import coldround.scoring.edge.FleetListStore;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * {@code fleet-list UNITS [postgresql]}: what the fleet page reads of a big fleet, for each way to
 * look for it, in milliseconds.
 */
final class FleetPages implements Benchmarks.Program {

  private static final int ROUNDS = 7;
  private static final int LINES = 51;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("fleet-list UNITS [postgresql]", 1, arguments);
    try (Store database = Store.of(asked.store());
        FleetListStore store = new FleetListStore(database.url(Store.DATABASE), asked.number(0))) {
      System.out.println(
          "| looked for | found | lines ms | count ms | lines and count ms | choices ms | page ms"
              + " |");
      System.out.println("|---|---|---|---|---|---|---|");
      Search all = new Search("", "", "", "", "", "");
      measure(store, "all, worst first", all, Order.SCORE, null);
      measure(store, "all, due first", all, Order.DUE, null);
      measure(store, "all, by name", all, Order.NAME, null);
      List<FleetLine> first = store.list().lines(all, Order.SCORE, null, LINES);
      Place middle = new Place(50, null, "", "", "", first.get(0).unitId());
      measure(store, "all, from the middle", all, Order.SCORE, middle);
      Place deep =
          store.list().lines(all, Order.NAME, null, 1000 * (LINES - 1)).stream()
              .reduce((a, b) -> b)
              .map(Place::of)
              .orElseThrow();
      measure(store, "all, by name, page 1,001", all, Order.NAME, deep);
      measure(store, "all, worst first, from there", all, Order.SCORE, deep);
      Search kind = new Search("", "", "", "ice-machine", "", "");
      measure(store, "kind", kind, Order.SCORE, null);
      measure(store, "refrigerant", new Search("", "", "", "", "R-22", ""), Order.SCORE, null);
      measure(store, "customer", new Search("C7", "", "", "", "", ""), Order.SCORE, null);
      measure(store, "site", new Search("C7", "S150", "", "", "", ""), Order.SCORE, null);
      measure(store, "tag", new Search("", "", "U-77", "", "", ""), Order.SCORE, null);
      Search both = new Search("C7", "", "", "ice-machine", "R-22", "");
      measure(store, "customer, kind and refrigerant", both, Order.NAME, null);
      Search words = new Search("", "", "", "", "", "thornfield 77");
      measure(store, "two words", words, Order.SCORE, null);
      measure(store, "two words, by name", words, Order.NAME, null);
      measure(store, "two words, from the middle", words, Order.SCORE, middle);
      measure(store, "a word of a site", new Search("", "", "", "", "", "dock"), Order.SCORE, null);
      measure(store, "nothing", new Search("", "", "", "", "", "zeppelin"), Order.SCORE, null);
    }
  }

  private static void measure(
      FleetListStore store, String name, Search search, Order order, Place after) {
    FleetList list = store.list();
    double[][] times = new double[4][ROUNDS];
    long found = 0;
    for (int i = 0; i < ROUNDS; i++) {
      store.forget();
      long start = System.nanoTime();
      list.lines(search, order, after, LINES);
      long lines = System.nanoTime();
      found = list.count(search);
      long count = System.nanoTime();
      store.forget();
      long again = System.nanoTime();
      list.find(search, order, after, LINES);
      long both = System.nanoTime();
      list.range();
      times[0][i] = (lines - start) / 1e6;
      times[1][i] = (count - lines) / 1e6;
      times[2][i] = (both - again) / 1e6;
      times[3][i] = (System.nanoTime() - both) / 1e6;
    }
    double[] medians = Arrays.stream(times).mapToDouble(FleetPages::median).toArray();
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %.1f | %.1f | %.1f | %.1f | %.1f |%n",
        name,
        found,
        medians[0],
        medians[1],
        medians[2],
        medians[3],
        medians[2] + medians[3]);
  }

  private static double median(double[] times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
