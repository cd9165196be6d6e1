package coldround.rounds.edge;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;

/** Where the rounds of a plan lead a technician. */
@Entity
@Table(name = "round_site")
@IdClass(RoundSiteRow.Key.class)
class RoundSiteRow {

  /** Natural key. */
  record Key(String planId, String technician, String customer, String site)
      implements Serializable {}

  @Id String planId;
  @Id String technician;
  @Id String customer;
  @Id String site;

  @Column(name = "last_day")
  LocalDate lastDay;

  static RoundSiteRow of(Key key, LocalDate lastDay) {
    RoundSiteRow row = new RoundSiteRow();
    row.planId = key.planId;
    row.technician = key.technician;
    row.customer = key.customer;
    row.site = key.site;
    row.lastDay = lastDay;
    return row;
  }
}
