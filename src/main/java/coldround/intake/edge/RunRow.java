package coldround.intake.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** A file whose sender did not wait for the receipt, until there is one. */
@Entity
@Table(name = "import_run")
class RunRow {
  @Id String id;

  String kind;
  Instant received;
  boolean preview;
  boolean partial;
  String state;
  String problem;

  /** Which instance has the file, and when it last said that it is alive. */
  String holder;

  Instant beat;
}
