package coldround.access.edge;

import coldround.access.Account;
import coldround.access.Role;
import coldround.access.Secret;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "account")
class AccountRow extends PanacheEntityBase {
  @Id String id;
  String name;
  String role;
  String tokenHash;
  String tokenPrefix;
  Instant created;

  Account read() {
    return new Account(id, name, Role.of(role));
  }

  void token(Secret token) {
    tokenHash = token.hash();
    tokenPrefix = token.prefix();
  }
}
