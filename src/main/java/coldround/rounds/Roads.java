package coldround.rounds;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.List;

/**
 * How a drive is estimated from the straight distance: scoring/travel.csv. The kilometres up to
 * each band's end are driven at that band's detour and speed, so that a longer way never takes less
 * time.
 */
public final class Roads {

  static final String FILE = "travel.csv";

  /**
   * One band of straight distances.
   *
   * @param upToKm where it ends; the last has no end
   * @param detour road kilometres per straight kilometre
   * @param speedKmh mean speed on the road
   */
  record Band(double upToKm, double detour, double speedKmh, Source source) {}

  private final List<Band> bands;

  private Roads(List<Band> bands) {
    this.bands = bands;
  }

  /** Reads the table; problems are left with the tables. */
  public static Roads load(RuleTables tables) {
    List<Band> bands = tables.read(FILE, "band", Roads::band);
    for (int i = 1; i < bands.size(); i++) {
      if (bands.get(i).upToKm <= bands.get(i - 1).upToKm) {
        tables.problem(FILE, 0, "up_to", "bands must stand in ascending order");
      }
    }
    if (bands.isEmpty() || !Double.isInfinite(bands.get(bands.size() - 1).upToKm)) {
      tables.problem(FILE, 0, "up_to", "the last band must have no end");
    }
    return new Roads(bands);
  }

  private static Band band(TableRow row) {
    return new Band(
        row.optionalNumber("up_to").orElse(Double.POSITIVE_INFINITY),
        row.number("detour", 1, 5),
        row.number("speed", 1, 150),
        row.source());
  }

  /** The drive over a straight distance. */
  Leg over(double straightKm) {
    double minutes = 0;
    double km = 0;
    double from = 0;
    for (Band band : bands) {
      double road = Math.max(0, Math.min(straightKm, band.upToKm) - from) * band.detour;
      km += road;
      minutes += 60 * road / band.speedKmh;
      from = band.upToKm;
    }
    return new Leg(minutes, km, true);
  }

  /** Road kilometres that take these minutes, for an imported time without a distance. */
  double kmIn(double minutes) {
    double left = minutes;
    double km = 0;
    double from = 0;
    for (Band band : bands) {
      double most = 60 * (band.upToKm - from) * band.detour / band.speedKmh;
      double taken = Math.min(left, most);
      km += taken * band.speedKmh / 60;
      left -= taken;
      from = band.upToKm;
    }
    return km;
  }
}
