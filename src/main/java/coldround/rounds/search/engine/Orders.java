package coldround.rounds.search.engine;

import java.util.ArrayList;
import java.util.List;

/**
 * The orders in which removed stops are put back, each with its weight; those of Christiaens and
 * Vanden Berghe (2020), and by price for stops that may be left out.
 */
final class Orders {

  private interface Key {
    double of(int stop);
  }

  private final Model model;
  private final List<float[]> keys = new ArrayList<>();
  private final List<Integer> weights = new ArrayList<>();
  private final int random;
  private int total;

  Orders(Model model) {
    this.model = model;
    random = 4;
    total = random;
    add(4, s -> -model.demand[s]);
    add(2, s -> -fromDepot(s));
    add(1, this::fromDepot);
    add(2, s -> model.lastClosing(s) - model.firstOpening(s));
    add(2, model::firstOpening);
    add(2, s -> -model.lastClosing(s));
    if (model.anyOptional) {
      add(4, s -> -model.price[s]);
    } else {
      add(2, s -> -model.service[s]);
    }
  }

  private double fromDepot(int stop) {
    return model.vehicles == 0 ? 0 : model.dist[model.fleet.startNode[0] * model.nodes + stop];
  }

  /** Adds an order unless all stops are equal in it. */
  private void add(int weight, Key key) {
    float[] values = new float[model.stops];
    boolean differ = false;
    for (int s : model.active) {
      values[s] = (float) key.of(s);
      differ |= values[s] != values[model.active[0]];
    }
    if (differ) {
      keys.add(values);
      weights.add(weight);
      total += weight;
    }
  }

  /** The keys of one order chosen by weight, least first; null means at random. */
  float[] choose(Chance chance) {
    int pick = chance.below(total) - random;
    int index = -1;
    while (pick >= 0) {
      pick -= weights.get(++index);
    }
    return index < 0 ? null : keys.get(index);
  }
}
