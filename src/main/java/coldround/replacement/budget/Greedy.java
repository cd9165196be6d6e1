package coldround.replacement.budget;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The plan a person might make: everybody starts with the option that spends nothing, then the
 * replacement that saves most for its money is taken, as long as it fits. For comparison only.
 */
public final class Greedy {

  private record Move(int unit, int option, double saving, double spend) {
    double worth() {
      return saving / Math.max(0.01, spend);
    }
  }

  private Greedy() {}

  /** Needs for every unit an option that spends nothing. */
  public static int[] plan(BudgetProblem problem) {
    int[] chosen = new int[problem.units().size()];
    List<Move> moves = new ArrayList<>();
    for (int u = 0; u < chosen.length; u++) {
      List<BudgetProblem.Option> options = problem.units().get(u).options();
      chosen[u] = free(options);
      for (int o = 0; o < options.size(); o++) {
        double saving = options.get(chosen[u]).cost() - options.get(o).cost();
        if (saving > 0) {
          moves.add(new Move(u, o, saving, options.get(o).spendInAll()));
        }
      }
    }
    moves.sort(Comparator.comparingDouble(Move::worth).reversed());
    boolean[] moved = new boolean[chosen.length];
    for (Move move : moves) {
      if (!moved[move.unit]) {
        int before = chosen[move.unit];
        chosen[move.unit] = move.option;
        moved[move.unit] = problem.within(problem.spend(chosen));
        if (!moved[move.unit]) {
          chosen[move.unit] = before;
        }
      }
    }
    return chosen;
  }

  private static int free(List<BudgetProblem.Option> options) {
    for (int o = 0; o < options.size(); o++) {
      if (options.get(o).spendInAll() == 0) {
        return o;
      }
    }
    throw new IllegalArgumentException("no option that spends nothing");
  }
}
