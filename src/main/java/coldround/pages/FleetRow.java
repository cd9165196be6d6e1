package coldround.pages;

import coldround.scoring.FleetLine;
import java.time.LocalDate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One unit in the fleet list, ready to be shown.
 *
 * @param make maker and model, as far as known
 * @param installed year, empty if unknown
 * @param place name of the site, else its code
 * @param dueIso date the next task falls due, empty when nothing is due
 * @param dueAway how far off that is
 * @param late true when that day has passed
 */
public record FleetRow(
    String id,
    String tag,
    String kind,
    String make,
    String customer,
    String customerName,
    String site,
    String place,
    String refrigerant,
    String installed,
    ScoreBar bar,
    String task,
    String dueIso,
    String due,
    String dueAway,
    boolean late) {

  public static FleetRow of(FleetLine line, LocalDate today) {
    LocalDate due = line.nextDue();
    return new FleetRow(
        line.unitId(),
        line.tag(),
        Words.title(line.kind()),
        make(line),
        line.customer(),
        named(line.customerName(), line.customer()),
        line.site(),
        named(line.siteName(), line.site()),
        line.refrigerant(),
        line.installed() == null ? "" : String.valueOf(line.installed().getYear()),
        ScoreBar.of(line),
        due == null ? "" : Words.title(line.nextTask()),
        due == null ? "" : due.toString(),
        due == null ? "" : Figures.day(due),
        due == null ? "" : Figures.away(due, today),
        due != null && due.isBefore(today));
  }

  private static String make(FleetLine line) {
    return Stream.of(line.maker(), line.model())
        .filter(FleetRow::said)
        .collect(Collectors.joining(" "));
  }

  private static boolean said(String text) {
    return text != null && !text.isEmpty();
  }

  private static String named(String name, String code) {
    return said(name) ? name : code;
  }
}
