package coldround.upkeep.edge;

import coldround.upkeep.Booking;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.ZoneOffset;

/** A task that was booked for a technician and is not any more. */
@Entity
@Table(name = "left_task")
class LeftTaskRow {
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long id;

  String taskId;
  Long unitId;
  String task;
  String technician;
  Instant starts;
  String zoneOffset;
  int minutes;
  int sequence;
  Instant changed;

  /**
   * @param minutes that the task takes
   * @param sequence of the task at the change with which it left
   */
  static LeftTaskRow of(BookingRow booking, String task, int minutes, int sequence, Instant now) {
    LeftTaskRow row = new LeftTaskRow();
    row.taskId = booking.taskId;
    row.unitId = booking.unitId;
    row.task = task;
    row.technician = booking.technician;
    row.starts = booking.starts;
    row.zoneOffset = booking.zoneOffset;
    row.minutes = minutes;
    row.sequence = sequence;
    row.changed = now;
    return row;
  }

  /** As it was before the task left. */
  Booking booking() {
    return new Booking(taskId, starts.atOffset(ZoneOffset.of(zoneOffset)), technician, "");
  }
}
