package coldround.scoring.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.hibernate.annotations.Immutable;

/** One line of the fleet list: a view of the store over unit and last assessment. */
@Entity
@Immutable
@Table(name = "fleet_line")
class FleetLineRow {
  @Id Long unitId;
  String customer;
  String customerName;
  String site;
  String siteName;
  String tag;
  String kind;
  String maker;
  String model;
  String refrigerant;
  LocalDate installed;
  LocalDate asOf;
  double score;
  double low;
  double high;
  double completeness;
  String factors;
  LocalDate nextDue;
  String nextTask;
}
