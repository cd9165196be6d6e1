package coldround.demo;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Comparator;
import java.util.List;

/** Who goes where: mostly the one who lives nearest among those who may touch the gas. */
final class Crew {

  record Member(String code, double latitude, double longitude, List<String> competences) {

    boolean mayTouch(String refrigerant) {
      return switch (refrigerant) {
        case "R-717" -> competences.contains("ammonia");
        case "R-744" -> competences.contains("co2");
        case "R-290" -> competences.contains("flammable");
        default -> competences.contains("refrigerant-handling");
      };
    }

    double squareOfDistance(Place place) {
      // a degree of longitude is about 0.79 of one of latitude there
      double east = 0.79 * (longitude - place.longitude());
      double north = latitude - place.latitude();
      return east * east + north * north;
    }
  }

  private final List<Member> members;

  private Crew(List<Member> members) {
    this.members = members;
  }

  static Crew read(RuleTables tables) {
    return new Crew(tables.read("technicians.csv", "technician", Crew::member));
  }

  private static Member member(TableRow row) {
    return new Member(
        row.required("technician"),
        row.number("latitude"),
        row.number("longitude"),
        row.codes("competences"));
  }

  List<Member> members() {
    return members;
  }

  String whoGoes(Plant plant, Chance chance) {
    List<Member> able =
        members.stream()
            .filter(member -> member.mayTouch(plant.model().refrigerant()))
            .sorted(Comparator.comparingDouble(member -> member.squareOfDistance(plant.site())))
            .toList();
    return (chance.happens(0.8) ? able.get(0) : chance.pick(able)).code();
  }
}
