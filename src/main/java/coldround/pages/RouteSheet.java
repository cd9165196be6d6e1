package coldround.pages;

import coldround.fleet.FleetNames;
import coldround.fleet.Reading;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.rounds.Job;
import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import coldround.upkeep.Task;
import coldround.upkeep.TaskCatalogue;
import coldround.upkeep.TaskKind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a technician takes along for one day: where to be when, what to do and why, what was read
 * last, what to bring, what to beware of.
 *
 * @param rest the break, empty for none
 * @param from where it starts and ends, empty when that is at home
 * @param bring for the whole day
 * @param cautions of the day, each once; the units refer to them by their letters
 */
public record RouteSheet(
    String day,
    String technician,
    String times,
    String driving,
    String rest,
    String from,
    List<String> bring,
    List<Caution> cautions,
    List<Stop> stops) {

  /** What to beware of on that day, and the letter that units refer to it by. */
  public record Caution(String letter, String text) {}

  /** One stop. */
  public record Stop(
      int number,
      String clock,
      String until,
      String site,
      String address,
      String hours,
      List<UnitPart> units) {}

  /**
   * One unit there.
   *
   * @param cautions letters of the cautions of the sheet that hold for it
   */
  public record UnitPart(
      String tag,
      String what,
      String read,
      List<Field> readings,
      List<Work> work,
      List<String> bring,
      List<String> cautions) {}

  /** One task on it; gone when it is no longer open. */
  public record Work(String task, String minutes, String due, String reason, boolean gone) {}

  /** A name and what stands behind it. */
  public record Field(String name, String value) {}

  /** What is known of a unit today. */
  public record Known(UnitHistory history, List<Task> open, List<String> cautions) {}

  private static final String AFTER_A_FAULT = "follow-up-inspection";

  /** Makes sheets from what is known of the units by id. */
  public record Maker(
      Map<String, Known> units, TaskCatalogue catalogue, MeasureSystem system, FleetNames names) {

    public RouteSheet sheet(RoundPlan.Round round) {
      List<Stop> stops = new ArrayList<>();
      Lettered cautions = new Lettered();
      for (RoundPlan.Stop stop : round.stops()) {
        stops.add(stop(stops.size() + 1, stop, round, cautions));
      }
      Set<String> bring = new LinkedHashSet<>();
      stops.forEach(stop -> stop.units.forEach(unit -> bring.addAll(unit.bring)));
      return new RouteSheet(
          RoundWords.day(round.day()) + " " + round.day().getYear(),
          round.name(),
          RoundWords.clock(round.leaves(), round.zone())
              + " to "
              + RoundWords.clock(round.returns(), round.zone()),
          RoundWords.minutes(round.drivingMinutes()),
          RoundWords.rest(round),
          stations(round),
          List.copyOf(bring),
          cautions.all(),
          stops);
    }

    private String stations(RoundPlan.Round round) {
      String home = round.technician();
      boolean usual = round.home().road().equals(home) && round.end().road().equals(home);
      return usual
          ? ""
          : "Starts at " + station(round.home(), home) + ", ends at " + station(round.end(), home);
    }

    private String station(Place place, String home) {
      return place.road().equals(home)
          ? "home"
          : place.road().contains("/") ? names.place(place.road()) : names.technician(place.road());
    }

    private Stop stop(int number, RoundPlan.Stop stop, RoundPlan.Round round, Lettered lettered) {
      Map<String, List<Job>> byUnit = new LinkedHashMap<>();
      for (Job job : stop.call().jobs()) {
        byUnit.computeIfAbsent(job.unit(), unit -> new ArrayList<>()).add(job);
      }
      List<UnitPart> parts = new ArrayList<>();
      byUnit.forEach((unit, jobs) -> parts.add(part(unit, jobs, lettered)));
      return new Stop(
          number,
          RoundWords.clock(stop.begins(), round.zone()),
          RoundWords.clock(stop.leaves(), round.zone()),
          RoundWords.site(stop.premises()),
          stop.premises().address(),
          stop.premises().hours().isEmpty() ? "any time" : stop.premises().hours(),
          parts);
    }

    private UnitPart part(String unitId, List<Job> jobs, Lettered lettered) {
      Known known = units.get(unitId);
      Optional<Visit> last =
          known == null
              ? Optional.empty()
              : known.history.lastVisit(
                  visit -> visit.readings().stream().anyMatch(Reading::usable));
      Set<String> bring = new LinkedHashSet<>();
      Set<String> cautions = new LinkedHashSet<>();
      for (Job job : jobs) {
        bring.addAll(bring(job, known));
        Optional<Task> task = open(job, known);
        List<String> unit = known == null ? List.of() : known.cautions;
        cautions.addAll(task.map(Task::cautions).orElse(unit));
      }
      return new UnitPart(
          jobs.get(0).tag(),
          known == null ? "" : what(known.history.unit()),
          last.map(visit -> Figures.day(visit.date())).orElse(""),
          last.map(this::readings).orElse(List.of()),
          jobs.stream().map(job -> work(job, known)).toList(),
          List.copyOf(bring),
          cautions.stream().map(lettered::of).toList());
    }

    private static String what(Unit unit) {
      List<String> parts = new ArrayList<>(List.of(Words.title(unit.kind())));
      String make = (unit.maker() + " " + unit.model()).strip();
      for (String part : List.of(make, unit.refrigerant(), Words.of(unit.condenserPlace()))) {
        if (!part.isEmpty()) {
          parts.add(part);
        }
      }
      return String.join(", ", parts);
    }

    private List<Field> readings(Visit visit) {
      return visit.readings().stream()
          .filter(Reading::usable)
          .map(reading -> new Field(name(reading), reading.value().in(system).toString()))
          .toList();
    }

    private static String name(Reading reading) {
      String name = Words.title(reading.quantity());
      // "Condenser fan" of the part "fan 1" is "Condenser fan 1"
      int word = name.lastIndexOf(' ') + 1;
      boolean said = reading.part().startsWith(name.substring(word) + " ");
      return reading.part().isEmpty()
          ? name
          : (said ? name.substring(0, word) : name + " ") + reading.part();
    }

    private Work work(Job job, Known known) {
      String reason =
          job.reasons().isEmpty() ? "" : Told.sentence(job.reasons().get(0).text(system));
      boolean planned = catalogue.all().stream().anyMatch(kind -> kind.code().equals(job.kind()));
      return new Work(
          Words.title(job.kind()),
          job.minutes() + " min",
          Figures.day(job.due()),
          reason,
          planned && open(job, known).isEmpty());
    }

    private static Optional<Task> open(Job job, Known known) {
      return known == null
          ? Optional.empty()
          : known.open.stream().filter(task -> task.id().equals(job.task())).findFirst();
    }

    private List<String> bring(Job job, Known known) {
      // for an emergency, what looking after a repair takes
      Optional<TaskKind> kind = kind(job.kind()).or(() -> kind(AFTER_A_FAULT));
      if (kind.isEmpty()) {
        return List.of();
      }
      Unit unit = known == null ? null : known.history.unit();
      String gas = unit == null ? "" : unit.refrigerant();
      List<String> bring = new ArrayList<>();
      for (String tool : kind.get().tools()) {
        bring.add(tool.startsWith("gauges") && !gas.isEmpty() ? tool + ", " + gas : tool);
      }
      for (String material : kind.get().materials()) {
        bring.add(material.startsWith("fan motor") ? material + rated(unit) : material);
      }
      if (kind.get().skill().equals("refrigerant") && !gas.isEmpty()) {
        bring.add("recovery kit, " + gas);
      }
      return bring;
    }

    private Optional<TaskKind> kind(String code) {
      return catalogue.all().stream().filter(each -> each.code().equals(code)).findFirst();
    }

    /** The amps of the motors as the nameplate gives them: ", condenser 1.20 A". */
    private String rated(Unit unit) {
      StringBuilder rated = new StringBuilder();
      for (String fan : unit == null ? List.<String>of() : List.of("condenser", "evaporator")) {
        Optional<Quantity> amps = unit.plate(fan + "_fan_rated");
        amps.ifPresent(
            value -> rated.append(", ").append(fan).append(' ').append(value.in(system)));
      }
      return rated.toString();
    }
  }
}
