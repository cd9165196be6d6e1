package coldround.scoring;

import java.time.LocalDate;
import java.util.List;

/**
 * One unit as the fleet list shows it, with its condition as it stood on {@code asOf}.
 *
 * @param points what each factor takes, in the order of scoring/weights.csv
 * @param nextDue due date of the task to do first, null when nothing is due
 */
public record FleetLine(
    String unitId,
    String customer,
    String customerName,
    String site,
    String siteName,
    String tag,
    String kind,
    String maker,
    String model,
    String refrigerant,
    LocalDate installed,
    LocalDate asOf,
    double score,
    double low,
    double high,
    double completeness,
    List<Points> points,
    LocalDate nextDue,
    String nextTask) {

  /** What one factor takes. */
  public record Points(String factor, double weight, double lost, boolean known) {}

  public FleetLine {
    points = List.copyOf(points);
  }
}
