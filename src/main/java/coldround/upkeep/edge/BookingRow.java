package coldround.upkeep.edge;

import coldround.store.OfUnits;
import coldround.upkeep.Booking;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

@Entity
@Table(name = "booking")
class BookingRow {
  static final OfUnits OF_UNITS =
      new OfUnits("booking", "task_id", "starts", "zone_offset", "technician", "reference");

  @Id String taskId;
  Long unitId;
  Instant starts;
  String zoneOffset;
  String technician;
  String reference;
  int version;

  Booking read() {
    return booking(taskId, starts, zoneOffset, technician, reference);
  }

  /** A row of {@link #OF_UNITS}. */
  static Booking booking(ResultSet stored) throws SQLException {
    return booking(
        stored.getString(2),
        stored.getObject(3, OffsetDateTime.class).toInstant(),
        stored.getString(4),
        stored.getString(5),
        stored.getString(6));
  }

  private static Booking booking(
      String taskId, Instant starts, String zoneOffset, String technician, String reference) {
    return new Booking(taskId, starts.atOffset(ZoneOffset.of(zoneOffset)), technician, reference);
  }

  void write(Booking booking) {
    starts = booking.start().toInstant();
    zoneOffset = booking.start().getOffset().getId();
    technician = booking.technician();
    reference = booking.reference();
    version++;
  }
}
