package coldround.upkeep;

import coldround.fleet.UnitHistory;
import coldround.scoring.Assessment;
import java.util.ArrayList;
import java.util.List;

/** Time to score units and to find their tasks, in the same run, after warming up. */
public final class TaskSpeed {

  private static final int UNITS = 2000;
  private static final int ROUNDS = 12;

  private TaskSpeed() {}

  public static void main(String... arguments) {
    List<UnitHistory> fleet = new ArrayList<>();
    for (int i = 0; i < UNITS; i++) {
      fleet.add(RandomFleet.history(i));
    }
    for (int round = 0; round < ROUNDS; round++) {
      long start = System.nanoTime();
      List<Assessment> assessed = new ArrayList<>();
      fleet.forEach(unit -> assessed.add(Rules.SCORING.assess(unit, RandomFleet.TODAY)));
      long scored = System.nanoTime();
      int tasks = 0;
      for (Assessment assessment : assessed) {
        tasks += Rules.UPKEEP.tasks(assessment, RandomFleet.TODAY).size();
      }
      long done = System.nanoTime();
      System.out.printf(
          "%d tasks; a unit: score %.1f us, tasks %.1f us%n",
          tasks, (scored - start) / 1e3 / UNITS, (done - scored) / 1e3 / UNITS);
    }
  }
}
