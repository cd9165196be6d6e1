package coldround.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Driving between the homes of the technicians and the sites, as an office would have timed it. */
final class Roads {

  private static final double EARTH_KM = 6371;
  private static final double KM_AN_HOUR = 62;
  private static final double MINUTES_TO_GET_GOING = 3;

  private record Stop(String name, double latitude, double longitude) {

    /** The valley runs from north-east to south-west; ridges part it from what lies north-west. */
    boolean beyondTheRidges() {
      return longitude < -79.25 && latitude > 38.3;
    }
  }

  private Roads() {}

  static List<List<String>> between(Story story) {
    List<Stop> stops = new ArrayList<>();
    for (Crew.Member member : story.crew().members()) {
      stops.add(new Stop(member.code(), member.latitude(), member.longitude()));
    }
    for (Place site : story.sites()) {
      String name = site.customer() + "/" + site.code();
      stops.add(new Stop(name, site.latitude(), site.longitude()));
    }
    return stops.stream().flatMap(from -> rows(from, stops)).toList();
  }

  private static Stream<List<String>> rows(Stop from, List<Stop> stops) {
    return stops.stream().filter(to -> !to.equals(from)).map(to -> row(from, to));
  }

  private static List<String> row(Stop from, Stop to) {
    double km = straightKm(from, to) * winding(from, to);
    double minutes = MINUTES_TO_GET_GOING + 60 * km / KM_AN_HOUR;
    return List.of(from.name(), to.name(), Figures.whole(minutes), Figures.rounded(km, 1));
  }

  private static double winding(Stop from, Stop to) {
    return from.beyondTheRidges() != to.beyondTheRidges() ? 1.55 : 1.22;
  }

  /** Great circle by the haversine. */
  private static double straightKm(Stop from, Stop to) {
    double north = StrictMath.sin(StrictMath.toRadians(to.latitude() - from.latitude()) / 2);
    double east = StrictMath.sin(StrictMath.toRadians(to.longitude() - from.longitude()) / 2);
    double narrowing =
        StrictMath.cos(StrictMath.toRadians(from.latitude()))
            * StrictMath.cos(StrictMath.toRadians(to.latitude()));
    double h = north * north + narrowing * east * east;
    return 2 * EARTH_KM * StrictMath.asin(StrictMath.sqrt(h));
  }
}
