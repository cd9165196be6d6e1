package coldround.scoring.edge;

import coldround.scoring.statistics.FaultTally;
import coldround.store.Column;
import coldround.store.PlainTable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** What one unit adds to the estimate of its class's prior. */
@Entity
@Table(name = "fault_tally")
class FaultTallyRow {
  static final PlainTable<FaultTallyRow> TABLE =
      new PlainTable<>(
          "fault_tally",
          1,
          List.of(
              Column.id("unit_id", row -> row.unitId),
              Column.text("fault_class", row -> row.faultClass),
              Column.day("first_seen", row -> row.firstSeen),
              Column.whole("faults", row -> row.faults),
              Column.text("fault_days", row -> row.faultDays),
              Column.day("retired", row -> row.retired)));

  @Id Long unitId;
  String faultClass;
  LocalDate firstSeen;
  int faults;
  // sorted, such as 2024-05-01;2025-07-30
  String faultDays;
  LocalDate retired;

  /** As it stood on a day. */
  FaultTally on(LocalDate day) {
    if (firstSeen.isAfter(day) || (retired != null && !retired.isAfter(day))) {
      return FaultTally.NONE;
    }
    return FaultTally.of(faultsUntil(day), ChronoUnit.DAYS.between(firstSeen, day));
  }

  private int faultsUntil(LocalDate day) {
    String last = day.toString();
    int count = 0;
    for (int at = 0; at < faultDays.length(); at += last.length() + 1) {
      count += faultDays.substring(at, at + last.length()).compareTo(last) <= 0 ? 1 : 0;
    }
    return count;
  }
}
