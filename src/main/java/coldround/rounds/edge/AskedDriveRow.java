package coldround.rounds.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;

/** One drive as the source told it. */
@Entity
@Table(name = "asked_drive")
@IdClass(AskedDriveRow.Key.class)
class AskedDriveRow {
  @Id String source;
  @Id String fromPlace;
  @Id String toPlace;
  double minutes;
  Double km;
  Instant asked;

  static AskedDriveRow of(String source, KeptDrives.Drive drive, Instant now) {
    AskedDriveRow row = new AskedDriveRow();
    row.source = source;
    row.fromPlace = drive.from();
    row.toPlace = drive.to();
    row.minutes = drive.minutes();
    row.km = drive.km();
    row.asked = now;
    return row;
  }

  /** What names a drive. */
  static class Key implements Serializable {
    private static final long serialVersionUID = 1;
    String source;
    String fromPlace;
    String toPlace;

    @Override
    public boolean equals(Object other) {
      return other instanceof Key key
          && Objects.equals(source, key.source)
          && Objects.equals(fromPlace, key.fromPlace)
          && Objects.equals(toPlace, key.toPlace);
    }

    @Override
    public int hashCode() {
      return Objects.hash(source, fromPlace, toPlace);
    }
  }
}
