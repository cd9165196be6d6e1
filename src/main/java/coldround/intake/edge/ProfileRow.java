package coldround.intake.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "import_profile")
class ProfileRow {
  @Id String name;
  String document;
  Instant saved;
}
