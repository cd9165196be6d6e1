package coldround.scoring;

import coldround.fleet.Site;
import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.time.Month;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Air that a condenser must cope with by place and month: scoring/design-ambients.csv. */
public final class DesignAmbients {

  static final String FILE = "design-ambients.csv";

  /**
   * @param hottestC design ambient of the year
   * @param belowK how much lower it is in each month, January first, north of the equator
   */
  record Place(String place, String name, double hottestC, double[] belowK, Source source) {}

  private final Map<String, Place> byPlace = new HashMap<>();

  private DesignAmbients() {}

  public static DesignAmbients load(RuleTables tables) {
    DesignAmbients ambients = new DesignAmbients();
    tables
        .read(FILE, "place", DesignAmbients::place)
        .forEach(place -> ambients.byPlace.put(place.place, place));
    return ambients;
  }

  private static Place place(TableRow row) {
    Measure below = Cells.measure(row, "below_measure", Dimension.TEMPERATURE_DIFFERENCE);
    double[] months = new double[12];
    for (Month month : Month.values()) {
      String column = month.name().substring(0, 3).toLowerCase(Locale.ROOT);
      months[month.ordinal()] = below.toBase(row.number(column, 0, 200));
    }
    Cells.measure(row, "measure", Dimension.TEMPERATURE);
    double hottestC = row.quantity("ambient", "measure").base();
    return new Place(row.required("place"), row.required("name"), hottestC, months, row.source());
  }

  Place of(String place) {
    return byPlace.get(place);
  }

  boolean has(String place) {
    return byPlace.containsKey(place);
  }

  /** Design ambient of a month at a site, whose own figure is that of the hottest month. */
  static double monthC(Place place, Site site, Month month) {
    boolean south = site.latitude() != null && site.latitude() < 0;
    Month course = south ? month.plus(6) : month;
    double hottest = site.designAmbient() != null ? site.designAmbient().base() : place.hottestC;
    return hottest - place.belowK[course.ordinal()];
  }
}
