package coldround.rounds.edge;

import coldround.feed.Change;
import coldround.rounds.RoundPlan;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.Map;

/** A round that the feed has told of, so that it can tell when it is not driven after all. */
@Entity
@Table(name = "round_told")
@IdClass(RoundToldRow.Key.class)
class RoundToldRow {

  /** Natural key. */
  record Key(String planId, String round) implements Serializable {}

  @Id String planId;

  @Id
  @Column(name = "round_key")
  String round;

  String technician;

  @Column(name = "round_day")
  LocalDate day;

  static RoundToldRow of(String planId, RoundPlan.Round round) {
    RoundToldRow row = new RoundToldRow();
    row.planId = planId;
    row.round = round.key();
    row.technician = round.technician();
    row.day = round.day();
    return row;
  }

  Change cancelled(int revision) {
    return new Change(
        "coldround.round.cancelled",
        planId + "/" + round,
        Map.of("plan", planId, "revision", revision, "technician", technician, "day", day));
  }
}
