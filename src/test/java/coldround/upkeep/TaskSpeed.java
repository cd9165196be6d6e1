package coldround.upkeep;

import coldround.fleet.UnitHistory;
import coldround.scoring.Assessment;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;

/** Processor time to score units and to find their tasks, in the same run, after warming up. */
public final class TaskSpeed {

  private static final int UNITS = 2000;
  private static final int ROUNDS = 40;

  private TaskSpeed() {}

  private static long cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  public static void main(String... arguments) {
    List<UnitHistory> fleet = new ArrayList<>();
    for (int i = 0; i < UNITS; i++) {
      fleet.add(RandomFleet.history(i));
    }
    for (int round = 0; round < ROUNDS; round++) {
      long start = cpu();
      List<Assessment> assessed = new ArrayList<>();
      fleet.forEach(unit -> assessed.add(Rules.SCORING.assess(unit, RandomFleet.TODAY)));
      long scored = cpu();
      int tasks = 0;
      for (Assessment assessment : assessed) {
        tasks += Rules.UPKEEP.tasks(assessment, RandomFleet.TODAY).size();
      }
      long done = cpu();
      System.out.printf(
          "%d tasks; a unit: score %.1f us, tasks %.1f us%n",
          tasks, (scored - start) / 1e3 / UNITS, (done - scored) / 1e3 / UNITS);
    }
  }
}
