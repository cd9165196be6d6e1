package coldround.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Turns the lives of the units into the lists of the standard form. */
final class Office {

  private final Story story;
  private final List<Attendance> visits;
  private final List<Mishap> mishaps;
  private final Map<Attendance, String> numbers;

  Office(Story story, List<UnitLife> lives) {
    this.story = story;
    this.visits =
        lives.stream()
            .flatMap(life -> life.visits.stream())
            .sorted(Comparator.comparing((Attendance visit) -> visit.day))
            .toList();
    this.mishaps =
        lives.stream()
            .flatMap(life -> life.mishaps.stream())
            .sorted(Comparator.comparing(Mishap::day))
            .toList();
    this.numbers = numbers(visits);
  }

  /** One work order a site and day, numbered through the year. */
  private static Map<Attendance, String> numbers(List<Attendance> visits) {
    Map<Attendance, String> numbers = new HashMap<>();
    Map<String, String> orders = new HashMap<>();
    Map<Integer, Integer> ofYear = new TreeMap<>();
    for (Attendance visit : visits) {
      String order = visit.day + visit.plant.site().code();
      numbers.put(visit, orders.computeIfAbsent(order, o -> next(visit.day, ofYear)));
    }
    return numbers;
  }

  private static String next(LocalDate day, Map<Integer, Integer> ofYear) {
    int number = ofYear.merge(day.getYear(), 1, Integer::sum);
    return "W" + day.getYear() % 100 + "-" + Figures.whole(1000 + number).substring(1);
  }

  String write(Path folder) {
    for (String list : List.of("customers.csv", "sites.csv", "technicians.csv")) {
      Sheet.write(folder.resolve(list), asTold(list));
    }
    Sheet.write(folder.resolve("units.csv"), Headers.UNITS, units());
    Sheet.write(folder.resolve("visits.csv"), Headers.VISITS, visits());
    List<List<String>> readings = readings();
    Sheet.write(folder.resolve("readings.csv"), Headers.READINGS, readings);
    Sheet.write(folder.resolve("faults.csv"), Headers.FAULTS, faults());
    Sheet.write(folder.resolve("travel-times.csv"), Headers.TRAVEL_TIMES, Roads.between(story));
    return String.format(
        Locale.ROOT,
        "{\"units\": %d, \"visits\": %d, \"readings\": %d, \"faults\": %d}",
        story.plants().size(),
        visits.size(),
        readings.size(),
        mishaps.size());
  }

  /** Lists that the story tells in the standard form already; only the line ends differ. */
  private static String asTold(String list) {
    String name = Story.FOLDER + "/" + list;
    try (InputStream in = Office.class.getClassLoader().getResourceAsStream(name)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.replace("\r\n", "\n").replace("\n", "\r\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<List<String>> units() {
    return story.plants().stream().map(this::unit).toList();
  }

  private List<String> unit(Plant plant) {
    Model model = plant.model();
    return List.of(
        plant.site().customer(),
        plant.site().code(),
        plant.tag(),
        model.kind(),
        plant.machine(),
        model.maker(),
        model.name(),
        serial(plant),
        plant.installed().map(LocalDate::toString).orElse(""),
        model.refrigerant(),
        known(plant, model.chargeLb()),
        known(plant, model.splitF()),
        optional(model.cutoutPsig()),
        optional(model.lowCutoutPsig()),
        optional(model.headControlPsig()),
        plant.where(),
        Figures.plain(model.compressorA()),
        Figures.plain(model.condenserFanA()),
        model.evaporatorFans() == 0 ? "" : Figures.plain(model.evaporatorFanA()),
        Figures.plain(model.supplyV()),
        optional(model.setpointF()),
        Figures.plain(model.costUsd()),
        plant.retired().map(LocalDate::toString).orElse(""));
  }

  /** Nobody wrote down the charge and the split of units that nobody looks after. */
  private static String known(Plant plant, double value) {
    return plant.care() == Care.THIN ? "" : Figures.plain(value);
  }

  private static String optional(OptionalDouble value) {
    return value.isEmpty() ? "" : Figures.plain(value.getAsDouble());
  }

  private static String serial(Plant plant) {
    Chance chance = new Chance("serial of " + plant.id());
    String year =
        plant.installed().map(day -> String.valueOf(day.getYear() % 100 + 100)).orElse("");
    return year.isEmpty() ? "" : year.substring(1) + "0" + chance.whole(10000, 99999);
  }

  private List<List<String>> visits() {
    return visits.stream().map(this::row).toList();
  }

  private List<String> row(Attendance visit) {
    List<String> row = key(visit);
    row.add(visit.day.toString());
    Headers.VISITS.stream().skip(row.size()).map(visit::cell).forEach(row::add);
    return row;
  }

  private List<String> key(Attendance visit) {
    Plant plant = visit.plant;
    Place site = plant.site();
    return new ArrayList<>(List.of(site.customer(), site.code(), plant.tag(), numbers.get(visit)));
  }

  private List<List<String>> readings() {
    List<List<String>> rows = new ArrayList<>();
    for (Attendance visit : visits) {
      for (Attendance.Single single : visit.singles) {
        List<String> row = key(visit);
        row.add(single.quantity());
        row.add(single.part());
        row.add(single.value());
        row.add(single.measure());
        row.add(single.notTaken());
        rows.add(row);
      }
    }
    return rows;
  }

  private List<List<String>> faults() {
    return mishaps.stream().map(Office::row).toList();
  }

  private static List<String> row(Mishap mishap) {
    Plant plant = mishap.plant();
    Trouble trouble = mishap.trouble();
    return List.of(
        plant.site().customer(),
        plant.site().code(),
        plant.tag(),
        mishap.day().toString(),
        trouble.mode(),
        trouble.cause(),
        mishap.repaired().toString(),
        trouble.downtimeH() == 0 ? "" : Figures.rounded(trouble.downtimeH(), 1),
        mishap.stockLostUsd() == 0 ? "" : Figures.whole(mishap.stockLostUsd()),
        "");
  }
}
