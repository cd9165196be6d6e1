package coldround.access.edge;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "page_session")
class PageSessionRow extends PanacheEntityBase {
  @Id String hash;
  String accountId;
  Instant expires;
}
