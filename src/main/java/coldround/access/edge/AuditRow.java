package coldround.access.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;

/** One entry; once written it never changes. */
@Entity
@Immutable
@Table(name = "audit")
class AuditRow {
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long id;

  Instant moment;
  String accountId;
  String accountName;
  String callId;
  String kind;
  String objectId;
  String action;
  String customer;
  String was;
  String became;
}
