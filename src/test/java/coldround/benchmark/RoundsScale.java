package coldround.benchmark;

import coldround.quantity.Measure;
import coldround.rounds.Draft;
import coldround.rounds.Job;
import coldround.rounds.Order;
import coldround.rounds.Place;
import coldround.rounds.Premises;
import coldround.rounds.Prices;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundRules;
import coldround.rounds.Travel;
import coldround.rounds.Worker;
import coldround.rounds.search.Limit;
import coldround.rounds.search.Plan;
import coldround.rounds.search.SearchListener;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import coldround.table.RuleTables;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * {@code rounds-scale TECHNICIANS TASKS SECONDS}: five days of invented work over a country side,
 * planned as the service plans it from the order to the answer: when the first plan with all that
 * the law asks for stands, what it costs then and at the end, and the memory it takes.
 */
final class RoundsScale {

  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final int UNITS_A_SITE = 3;

  private RoundsScale() {}

  static void run(String... arguments) throws Exception {
    if (arguments.length != 3) {
      throw new IllegalArgumentException("rounds-scale TECHNICIANS TASKS SECONDS");
    }
    int technicians = (int) RoutingFile.number(arguments[0], 1);
    int tasks = (int) RoutingFile.number(arguments[1], 1);
    double seconds = Rounds.seconds(arguments[2]);
    RuleTables tables = new RuleTables("scoring", null);
    RoundRules rules = RoundRules.load(tables);
    tables.check();
    Order order = order(technicians, tasks, new Random(1));
    Prices prices = new Prices(90, 1.5, 0.4, 80, Measure.of("USD"));
    long begin = System.nanoTime();
    Draft draft = Draft.of(order, rules, prices, new Travel(rules.roads()));
    double drafted = (System.nanoTime() - begin) * 1e-9;
    First first = new First(begin);
    SearchOptions options = SearchOptions.of(1, Limit.seconds(seconds));
    Plan best = new RuinAndRecreate().search(draft.problem(), Optional.empty(), options, first);
    RoundPlan plan = draft.answer(draft.together(best));
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("technicians", technicians);
    figures.put("tasks", tasks);
    figures.put("calls", draft.problem().stops().size());
    figures.put("draftedSeconds", round(drafted));
    figures.put("firstSeconds", round(first.seconds));
    figures.put("firstCost", Math.round(first.cost));
    figures.put("cost", Math.round(plan.cost().total()));
    figures.put("rounds", plan.rounds().size());
    figures.put("leftOut", plan.leftOut().size());
    figures.put("complete", best.complete());
    figures.put("seconds", round((System.nanoTime() - begin) * 1e-9));
    figures.put("heapPeakMegabytes", peakMegabytes());
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }

  private static double round(double value) {
    return Math.round(100 * value) / 100.0;
  }

  /** Sum of the highest fill of each part of the heap: garbage not yet collected counts. */
  private static long peakMegabytes() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .map(MemoryPoolMXBean::getPeakUsage)
            .mapToLong(usage -> usage.getUsed())
            .sum()
        / 1_000_000;
  }

  /** The first plan that serves all that must be. */
  private static final class First implements SearchListener {
    private final long begin;
    private double seconds = Double.NaN;
    private double cost = Double.NaN;

    First(long begin) {
      this.begin = begin;
    }

    @Override
    public synchronized void better(Plan plan) {
      if (Double.isNaN(seconds) && plan.complete()) {
        seconds = (System.nanoTime() - begin) * 1e-9;
        cost = plan.cost().total();
      }
    }

    @Override
    public boolean cancelled() {
      return false;
    }
  }

  private static Order order(int technicians, int tasks, Random chance) {
    List<Worker> workers = new ArrayList<>();
    for (int t = 0; t < technicians; t++) {
      Set<String> skills =
          switch (t % 4) {
            case 0 -> Set.of("electrical", "refrigerant-handling", "flammable");
            case 1 -> Set.of("electrical", "refrigerant-handling");
            case 2 -> Set.of("electrical");
            default -> Set.of("refrigerant-handling", "electrical");
          };
      String hours = t % 3 == 0 ? "Mo-Th 07:00-17:00" : "Mo-Fr 07:30-16:00";
      workers.add(
          new Worker("T" + t, "T" + t, place("T" + t, chance), hours, ZONE, skills, Set.of()));
    }
    List<Premises> sites = new ArrayList<>();
    for (int s = 0; s < Math.max(1, tasks / UNITS_A_SITE); s++) {
      String hours = List.of("", "Mo-Fr 06:00-14:00", "Mo-Fr 08:00-11:00,14:00-18:00").get(s % 3);
      String code = "C/S" + s;
      sites.add(new Premises(code, code, "", place(code, chance), ZONE, hours));
    }
    List<Job> jobs = new ArrayList<>();
    for (int j = 0; j < tasks; j++) {
      jobs.add(job(j, sites.get(chance.nextInt(sites.size())).code(), chance));
    }
    return new Order(
        MONDAY,
        MONDAY.plusDays(4),
        MONDAY.minusDays(1).atStartOfDay(ZONE).toInstant(),
        workers,
        sites,
        jobs,
        List.of());
  }

  private static Place place(String code, Random chance) {
    return new Place(code, 37.5 + 2 * chance.nextDouble(), -80 + 2.5 * chance.nextDouble());
  }

  private static Job job(int number, String site, Random chance) {
    LocalDate due = MONDAY.plusDays(chance.nextInt(28) - 14);
    boolean legal = number % 20 == 0;
    Set<String> skills =
        switch (number % 4) {
          case 0 -> Set.of("refrigerant-handling");
          case 1 -> Set.of("electrical");
          default -> Set.of();
        };
    return new Job(
        "t" + number,
        site,
        "u" + number,
        "U" + number,
        "drain-clearing",
        15 + 5 * chance.nextInt(10),
        skills,
        due.minusDays(21),
        due,
        due.plusDays(14),
        legal ? MONDAY.plusDays(2 + chance.nextInt(3)) : null,
        chance.nextDouble() * 8,
        List.of());
  }
}
