package coldround.rounds;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Minutes of drives worked out apart from the planner: of its own list of imported ones, else over
 * the angle between two vectors and the bands of the table, read as plain text.
 */
final class DrivesByHand {

  private static final double EARTH_KM = 6371.0088; // mean radius R1 of GRS 80 (Moritz, 2000)

  /** Ends of the bands in straight km, each with the minutes that one straight km takes in it. */
  private final List<double[]> bands = new ArrayList<>();

  private final Map<String, Double> imported = new HashMap<>();

  DrivesByHand() {
    try {
      List<String> lines = Files.readAllLines(Path.of("scoring", "travel.csv"));
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",");
        double end = cells[1].isEmpty() ? Double.MAX_VALUE : Double.parseDouble(cells[1]);
        double minutes = 60 * Double.parseDouble(cells[2]) / Double.parseDouble(cells[3]);
        bands.add(new double[] {end, minutes});
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void put(String from, String to, double minutes) {
    imported.put(from + " > " + to, minutes);
  }

  double minutes(Place from, Place to) {
    String there = from.road() + " > " + to.road();
    String opposite = to.road() + " > " + from.road();
    if (from.road().equals(to.road())) {
      return 0;
    }
    Double known = imported.getOrDefault(there, imported.get(opposite));
    return known != null ? known : estimate(kilometres(vector(from), vector(to)));
  }

  private double estimate(double straight) {
    double minutes = 0;
    double begin = 0;
    for (double[] band : bands) {
      if (straight > begin) {
        minutes += (Math.min(straight, band[0]) - begin) * band[1];
      }
      begin = band[0];
    }
    return minutes;
  }

  private static double[] vector(Place place) {
    double north = Math.toRadians(place.latitude());
    double east = Math.toRadians(place.longitude());
    return new double[] {
      Math.cos(north) * Math.cos(east), Math.cos(north) * Math.sin(east), Math.sin(north)
    };
  }

  private static double kilometres(double[] a, double[] b) {
    double x = a[1] * b[2] - a[2] * b[1];
    double y = a[2] * b[0] - a[0] * b[2];
    double z = a[0] * b[1] - a[1] * b[0];
    double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    return EARTH_KM * Math.atan2(Math.sqrt(x * x + y * y + z * z), dot);
  }
}
