package coldround.upkeep.edge;

import coldround.upkeep.Booking;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.ZoneOffset;

@Entity
@Table(name = "booking")
class BookingRow {
  @Id String taskId;
  Long unitId;
  Instant starts;
  String zoneOffset;
  String technician;
  String reference;
  int version;

  Booking read() {
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
