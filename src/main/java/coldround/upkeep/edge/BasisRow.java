package coldround.upkeep.edge;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** What the stored assessments were worked out with, and for which day. */
@Entity
@Table(name = "assessment_basis")
class BasisRow extends PanacheEntityBase {
  static final int ONLY = 1;

  @Id Integer id;
  String fingerprint;
}
