package coldround.upkeep.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;

/** Where a unit stands, for finding tasks by customer and site: a view of the store. */
@Entity
@Immutable
@Table(name = "unit_place")
class TaskPlaceRow {
  @Id Long unitId;
  String customer;
  String site;
  String tag;
}
