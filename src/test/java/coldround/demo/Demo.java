package coldround.demo;

import coldround.benchmark.Benchmarks;
import coldround.refrigerant.Refrigerants;
import coldround.table.RuleTables;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Makes the lists of the invented contractor, the same bytes each time: {@code demo FOLDER}. */
public final class Demo implements Benchmarks.Program {

  @Override
  public void run(String... arguments) {
    if (arguments.length != 1) {
      throw new IllegalArgumentException("demo needs the folder to write to, such as demo-data");
    }
    System.out.println(make(Path.of(arguments[0])));
  }

  /** Writes every list of the standard form and answers the figures as one JSON object. */
  static String make(Path folder) {
    Story story = new Story();
    List<UnitLife> lives = lives(story);
    return new Office(story, lives).write(folder);
  }

  private static List<UnitLife> lives(Story story) {
    Refrigerants refrigerants = Refrigerants.load(new RuleTables("scoring", null));
    Map<Place, SiteRounds> rounds = new HashMap<>();
    List<Place> sites = story.sites();
    sites.forEach(site -> rounds.put(site, new SiteRounds(site, sites.indexOf(site))));
    List<UnitLife> lives = new ArrayList<>();
    for (Plant plant : story.plants()) {
      Gauge gauge =
          Gauge.at(
              refrigerants.curve(plant.model().refrigerant()).orElseThrow(),
              plant.site().elevationM());
      lives.add(new UnitLife(story, plant, rounds.get(plant.site()), gauge));
    }
    lives.forEach(UnitLife::live);
    return lives;
  }
}
