package coldround.rounds.search.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Large problems: each worker gets a part of the tours, those near one another, with their stops,
 * and changes only these; then the parts are put together again.
 */
final class SharedWork {

  private final Model model;
  private final List<Worker> workers;
  private final Snapshot current;
  private final Snapshot merged;
  private final int[] workerOf;
  private final Solution whole;

  SharedWork(Model model, List<Worker> workers) {
    this.model = model;
    this.workers = workers;
    current = new Snapshot(model);
    merged = new Snapshot(model);
    workerOf = new int[model.vehicles];
    whole = workers.get(0).solution;
  }

  /** Gives each worker the whole present solution and its part of it. */
  void share() {
    if (current.missing == Integer.MAX_VALUE) {
      current.take(whole);
    }
    whole.load(current);
    assignTours();
    List<List<Integer>> parts = assignStops();
    for (int i = 0; i < workers.size(); i++) {
      hand(i, parts.get(i).stream().mapToInt(Integer::intValue).toArray());
    }
  }

  private void hand(int index, int[] stops) {
    Worker worker = workers.get(index);
    worker.load(current);
    Solution solution = worker.solution;
    for (int v = 0; v < model.vehicles; v++) {
      solution.open[v] = model.fleet.usable[v] && workerOf[v] == index;
    }
    Arrays.fill(solution.isOwn, false);
    for (int s : stops) {
      solution.isOwn[s] = true;
    }
    solution.own = stops;
  }

  /**
   * Tours in order of their distance from a random stop, cut into equal parts; empty ones dealt.
   */
  private void assignTours() {
    int[] active = model.active;
    int pole = active[workers.get(0).chance.below(active.length)];
    List<Integer> used = new ArrayList<>();
    int dealt = 0;
    for (int v = 0; v < model.vehicles; v++) {
      if (whole.tours[v].size > 0) {
        used.add(v);
      } else {
        workerOf[v] = dealt++ % workers.size();
      }
    }
    used.sort(Comparator.comparingDouble(v -> distance(pole, whole.tours[v])));
    for (int i = 0; i < used.size(); i++) {
      workerOf[used.get(i)] = i * workers.size() / used.size();
    }
  }

  private double distance(int pole, Tour tour) {
    return model.dist[pole * model.nodes + tour.node[1 + tour.size / 2]];
  }

  /** Stops go with their tour, absent ones with the nearest stop that has one. */
  private List<List<Integer>> assignStops() {
    List<List<Integer>> parts = new ArrayList<>();
    workers.forEach(worker -> parts.add(new ArrayList<>()));
    for (int s : model.active) {
      int v = whole.tourOf[s] == Solution.NOWHERE ? tourNear(s) : whole.tourOf[s];
      parts.get(v == Solution.NOWHERE ? s % workers.size() : workerOf[v]).add(s);
    }
    for (List<Integer> part : parts) {
      if (part.isEmpty()) {
        part.add(model.active[0]);
      }
    }
    return parts;
  }

  private int tourNear(int stop) {
    for (int other : model.near()[stop]) {
      if (whole.tourOf[other] != Solution.NOWHERE) {
        return whole.tourOf[other];
      }
    }
    return Solution.NOWHERE;
  }

  /** Puts the parts together: the present ones to go on from, and the best ones as the answer. */
  Snapshot merge() {
    List<Snapshot> bests = new ArrayList<>();
    List<Snapshot> currents = new ArrayList<>();
    for (Worker worker : workers) {
      Snapshot now = new Snapshot(model);
      now.take(worker.solution);
      currents.add(now);
      bests.add(worker.best);
    }
    join(bests, merged);
    join(currents, current);
    return merged;
  }

  private void join(List<Snapshot> parts, Snapshot into) {
    int at = 0;
    for (int v = 0; v < model.vehicles; v++) {
      Snapshot part = parts.get(workerOf[v]);
      into.from[v] = at;
      System.arraycopy(part.stops, part.from[v], into.stops, at, part.size(v));
      at += part.size(v);
    }
    into.from[model.vehicles] = at;
    whole.load(into);
    into.cost = whole.cost;
    into.missing = whole.missing;
  }
}
