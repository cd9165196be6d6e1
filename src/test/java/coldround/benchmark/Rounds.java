package coldround.benchmark;

import coldround.rounds.search.Fault;
import coldround.rounds.search.Goal;
import coldround.rounds.search.Limit;
import coldround.rounds.search.Plan;
import coldround.rounds.search.PlanChecker;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Route;
import coldround.rounds.search.SearchListener;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.engine.RuinAndRecreate;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * {@code rounds FILE SECONDS [distance|vehicles]}: plans one benchmark file and prints the routes
 * as lists of customer numbers, then the figures as JSON.
 */
final class Rounds {

  /** Kept for writing the answer. */
  private static final double WRITING_SECONDS = 0.2;

  private static final long SEED = 1;

  private Rounds() {}

  static void run(String... arguments) throws Exception {
    if (arguments.length < 2 || arguments.length > 3) {
      throw new IllegalArgumentException("rounds FILE SECONDS [distance|vehicles]");
    }
    double seconds = seconds(arguments[1]);
    double started = ManagementFactory.getRuntimeMXBean().getUptime() / 1000.0;
    long begin = System.nanoTime();
    RoutingInstance instance = RoutingFile.read(Path.of(arguments[0]));
    Goal goal = arguments.length == 3 ? goal(arguments[2]) : instance.publishedGoal();
    // the start of the virtual machine belongs to the time allowed, up to half of it
    double before = Math.min(seconds / 2, started) + (System.nanoTime() - begin) * 1e-9;
    Plan plan = plan(instance, goal, Math.max(0.1, seconds - before - WRITING_SECONDS));
    boolean feasible = print(instance, goal, plan, started + (System.nanoTime() - begin) * 1e-9);
    if (!feasible) {
      throw new IllegalArgumentException(instance.name() + ": no plan found that serves all");
    }
  }

  static double seconds(String text) {
    double seconds = RoutingFile.number(text, 1);
    if (seconds <= 0) {
      throw new IllegalArgumentException("SECONDS must be above 0, not " + text);
    }
    return seconds;
  }

  private static Goal goal(String word) {
    return switch (word) {
      case "distance" -> Goal.LOWEST_COST;
      case "vehicles" -> Goal.FEWEST_VEHICLES;
      default ->
          throw new IllegalArgumentException("the goal is distance or vehicles, not " + word);
    };
  }

  /** Plans an instance; a stop that no plan can serve is an error of the file. */
  static Plan plan(RoutingInstance instance, Goal goal, double seconds) {
    requireRoom(instance);
    Plan plan =
        new RuinAndRecreate()
            .search(
                instance.problem(),
                Optional.empty(),
                new SearchOptions(SEED, Limit.seconds(seconds), 2, goal),
                SearchListener.SILENT);
    plan.leftOut().stream()
        .filter(left -> left.mandatory() && left.fault() != Fault.NO_ROOM)
        .findFirst()
        .ifPresent(
            left -> {
              String name = instance.problem().stops().get(left.stop()).name();
              throw new IllegalArgumentException(
                  instance.name() + ": " + name + " cannot be served: " + left.fault().text());
            });
    return plan;
  }

  /** Refuses a file whose vehicles cannot hold what must be served, whatever the plan. */
  private static void requireRoom(RoutingInstance instance) {
    Problem problem = instance.problem();
    double room = problem.vehicles().stream().mapToDouble(Vehicle::capacity).sum();
    double demand =
        problem.stops().stream().filter(Stop::mandatory).mapToDouble(Stop::demand).sum();
    if (problem.vehicles().isEmpty()) {
      throw new IllegalArgumentException(instance.name() + ": there is no vehicle");
    }
    if (demand > room) {
      throw new IllegalArgumentException(
          instance.name() + ": the demand of " + demand + " exceeds all capacity, " + room);
    }
  }

  static boolean feasible(RoutingInstance instance, Plan plan) {
    return plan.complete() && PlanChecker.check(instance.problem(), plan).isEmpty();
  }

  private static boolean print(RoutingInstance instance, Goal goal, Plan plan, double seconds)
      throws Exception {
    List<List<Integer>> routes = new ArrayList<>();
    for (Route route : plan.routes()) {
      routes.add(route.stops().stream().map(instance.numbers()::get).toList());
    }
    for (int i = 0; i < routes.size(); i++) {
      System.out.println("route " + (i + 1) + ": " + words(routes.get(i)));
    }
    PlanChecker.check(instance.problem(), plan).forEach(System.out::println);
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("instance", instance.name());
    figures.put("vehicles", routes.size());
    figures.put("distance", round(plan.distance()));
    figures.put("seconds", Math.round(seconds * 100) / 100.0);
    boolean feasible = feasible(instance, plan);
    figures.put("feasible", feasible);
    figures.put("goal", words(instance, goal));
    if (instance.higherIsBetter()) {
      figures.put("score", round(instance.collected(plan)));
      figures.put("objective", round(instance.objective(plan)));
    }
    figures.put("routes", routes);
    System.out.println(new ObjectMapper().writeValueAsString(figures));
    return feasible;
  }

  private static String words(List<Integer> numbers) {
    return String.join(" ", numbers.stream().map(String::valueOf).toList());
  }

  private static String words(RoutingInstance instance, Goal goal) {
    return switch (instance.kind()) {
      case ORIENTEERING -> "highest score";
      case PROFIT -> "highest prizes less distance";
      default ->
          goal == Goal.FEWEST_VEHICLES ? "fewest vehicles, then distance" : "shortest distance";
    };
  }

  private static double round(double value) {
    return Math.round(value * 1e6) / 1e6;
  }
}
