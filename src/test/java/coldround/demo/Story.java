package coldround.demo;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The invented contractor's tables under src/test/resources/coldround/demo. */
final class Story {

  static final String FOLDER = "coldround/demo";
  static final LocalDate FIRST_DAY = LocalDate.of(2023, 11, 6);
  static final LocalDate LAST_DAY = LocalDate.of(2026, 11, 23);

  private record Said(String text, String about) {}

  private final Map<String, Place> sites;
  private final List<Plant> plants;
  private final Map<String, Double> foulingKelvinAMonth;
  private final Map<String, List<String>> notes;
  private final Map<String, List<String>> notTaken;
  private final Weather weather;
  private final Crew crew;

  Story() {
    RuleTables tables = new RuleTables(FOLDER, null);
    sites = byName(tables.read("sites.csv", "site", Place::of), Place::code);
    Map<String, Model> models = byName(tables.read("models.csv", "model", Model::of), Model::name);
    plants = tables.read("units.csv", "id", row -> Plant.of(row, sites, models));
    foulingKelvinAMonth =
        tables.read("surroundings.csv", "surroundings", Story::fouling).stream()
            .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    notes = said(tables, "notes.csv", "text", "occasion");
    notTaken = said(tables, "not-taken.csv", "reason", "quantity");
    weather = Weather.read(tables);
    crew = Crew.read(tables);
    tables.check();
  }

  private static <T> Map<String, T> byName(List<T> items, Function<T, String> name) {
    Map<String, T> map = new LinkedHashMap<>();
    items.forEach(item -> map.put(name.apply(item), item));
    return map;
  }

  private static Map.Entry<String, Double> fouling(TableRow row) {
    return Map.entry(row.required("surroundings"), row.number("kelvin_a_month"));
  }

  private static Map<String, List<String>> said(
      RuleTables tables, String file, String text, String about) {
    return tables
        .read(file, text, row -> new Said(row.required(text), row.required(about)))
        .stream()
        .collect(
            Collectors.groupingBy(
                Said::about, Collectors.mapping(Said::text, Collectors.toList())));
  }

  List<Plant> plants() {
    return plants;
  }

  List<Place> sites() {
    return List.copyOf(sites.values());
  }

  Weather weather() {
    return weather;
  }

  Crew crew() {
    return crew;
  }

  double foulingKelvinADay(Plant plant) {
    return foulingKelvinAMonth.get(plant.site().surroundings()) * plant.growth() / 30.4;
  }

  /** One of the ways a technician puts it. */
  Optional<String> note(String occasion, Chance chance) {
    return Optional.ofNullable(notes.get(occasion)).map(chance::pick);
  }

  Optional<String> whyNotTaken(String quantity, Chance chance) {
    return Optional.ofNullable(notTaken.get(quantity)).map(chance::pick);
  }
}
