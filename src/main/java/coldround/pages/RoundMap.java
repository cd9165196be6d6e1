package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The rounds of a day as a map, drawn from coordinates alone: degrees on a plane that is true in
 * the middle of the picture.
 *
 * @param told the whole map in one sentence, for those who do not see it
 */
public record RoundMap(
    int width, int height, List<Way> ways, List<Dot> dots, Scale scale, String told) {

  /** The line of one round, straight from place to place. */
  public record Way(int colour, String points) {}

  /**
   * A place.
   *
   * @param home true for where a day starts
   * @param label numbers of the stops, or the code of the technician
   */
  public record Dot(int colour, boolean home, String x, String y, String label, String name) {

    /** Room for the label, so that it never stands out of its shape. */
    public int width() {
      return Math.max(home ? LEAST_BOX : LEAST_DOT, label.length() * LETTER + PADDING);
    }

    /** From the place to the left edge of the shape. */
    public int shift() {
      return -width() / 2;
    }
  }

  /** A bar of a round length. */
  public record Scale(String length, String label) {}

  private static final int LEAST_BOX = 22;
  private static final int LEAST_DOT = 20;
  private static final int LETTER = 7;
  private static final int PADDING = 8;
  private static final int WIDTH = 480;
  private static final int HEIGHT = 340;
  private static final int EDGE = 36;
  private static final double KM_A_DEGREE = 111.195;
  private static final double[] ROUND_LENGTHS = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

  /** How many ways of drawing a round the style sheet knows. */
  static final int COLOURS = 6;

  public RoundMap {
    ways = List.copyOf(ways);
    dots = List.copyOf(dots);
  }

  /** True when there is something to draw. */
  public boolean drawn() {
    return !dots.isEmpty();
  }

  public static RoundMap of(List<RoundPlan.Round> rounds, MeasureSystem system) {
    return new Drawing(rounds, system).draw();
  }

  /** The picture in the making. */
  private static final class Drawing {
    private final List<RoundPlan.Round> rounds;
    private final MeasureSystem system;
    private final double west;
    private final double north;
    private final double narrowing;
    private final double pixelsADegree;

    Drawing(List<RoundPlan.Round> rounds, MeasureSystem system) {
      this.rounds = rounds;
      this.system = system;
      List<Place> places = new ArrayList<>();
      for (RoundPlan.Round round : rounds) {
        places.add(round.home());
        places.add(round.end());
        round.stops().forEach(stop -> places.add(stop.premises().place()));
      }
      places.removeIf(place -> !place.located());
      west = places.stream().mapToDouble(Place::longitude).min().orElse(0);
      north = places.stream().mapToDouble(Place::latitude).max().orElse(0);
      double east = places.stream().mapToDouble(Place::longitude).max().orElse(0);
      double south = places.stream().mapToDouble(Place::latitude).min().orElse(0);
      narrowing = Math.cos(Math.toRadians((north + south) / 2));
      double wide = Math.max(0.01, (east - west) * narrowing);
      double high = Math.max(0.01, north - south);
      pixelsADegree = Math.min((WIDTH - 2 * EDGE) / wide, (HEIGHT - 2 * EDGE) / high);
    }

    RoundMap draw() {
      List<Way> ways = new ArrayList<>();
      List<Dot> dots = new ArrayList<>();
      for (int i = 0; i < rounds.size(); i++) {
        int colour = i % COLOURS + 1;
        ways.add(new Way(colour, way(rounds.get(i))));
        dots(rounds.get(i), colour, dots);
      }
      String told =
          rounds.stream()
              .map(round -> round.technician() + " to " + sites(round))
              .collect(Collectors.joining("; "));
      return new RoundMap(WIDTH, HEIGHT, ways, dots, scale(), "Map of the rounds: " + told);
    }

    private static String sites(RoundPlan.Round round) {
      return round.stops().stream()
          .map(stop -> RoundWords.site(stop.premises()))
          .distinct()
          .collect(Collectors.joining(", "));
    }

    private String way(RoundPlan.Round round) {
      List<Place> places = new ArrayList<>(List.of(round.home()));
      round.stops().forEach(stop -> places.add(stop.premises().place()));
      places.add(round.end());
      return places.stream()
          .filter(Place::located)
          .map(place -> x(place) + "," + y(place))
          .collect(Collectors.joining(" "));
    }

    private void dots(RoundPlan.Round round, int colour, List<Dot> dots) {
      if (round.home().located()) {
        dots.add(dot(colour, true, round.home(), round.technician(), "home of " + round.name()));
      }
      if (round.end().located() && !round.end().equals(round.home())) {
        dots.add(dot(colour, true, round.end(), round.technician(), "end of " + round.name()));
      }
      Map<String, List<Integer>> numbers = new LinkedHashMap<>();
      Map<String, RoundPlan.Stop> stops = new LinkedHashMap<>();
      for (int i = 0; i < round.stops().size(); i++) {
        String site = round.stops().get(i).premises().code();
        numbers.computeIfAbsent(site, code -> new ArrayList<>()).add(i + 1);
        stops.putIfAbsent(site, round.stops().get(i));
      }
      numbers.forEach(
          (site, all) -> {
            RoundPlan.Stop stop = stops.get(site);
            if (stop.premises().place().located()) {
              String label = spans(all);
              String name = RoundWords.site(stop.premises());
              dots.add(dot(colour, false, stop.premises().place(), label, name));
            }
          });
    }

    /** "1-3" for stops one after the other, "1, 4" for others. */
    private static String spans(List<Integer> numbers) {
      List<String> spans = new ArrayList<>();
      int first = numbers.get(0);
      for (int i = 0; i < numbers.size(); i++) {
        int last = numbers.get(i);
        if (i + 1 == numbers.size() || numbers.get(i + 1) != last + 1) {
          spans.add(first == last ? "" + first : first + "-" + last);
          first = i + 1 == numbers.size() ? last : numbers.get(i + 1);
        }
      }
      return String.join(", ", spans);
    }

    private Dot dot(int colour, boolean home, Place place, String label, String name) {
      return new Dot(colour, home, x(place), y(place), label, name);
    }

    private String x(Place place) {
      return number(EDGE + (place.longitude() - west) * narrowing * pixelsADegree);
    }

    private String y(Place place) {
      return number(EDGE + (north - place.latitude()) * pixelsADegree);
    }

    /** The longest round length that takes up at most a quarter of the picture. */
    private Scale scale() {
      Measure measure = system == MeasureSystem.SI ? Measure.KILOMETRE : Measure.MILE;
      double pixelsEach = measure.toBase(1) / KM_A_DEGREE * pixelsADegree;
      double length = ROUND_LENGTHS[0];
      for (double longer : ROUND_LENGTHS) {
        length = longer * pixelsEach <= WIDTH / 4.0 ? longer : length;
      }
      String label = Figures.decimal(length, 0) + " " + measure.label();
      return new Scale(number(length * pixelsEach), label);
    }

    private static String number(double value) {
      return String.format(Locale.ROOT, "%.1f", value);
    }
  }
}
