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
  String customer;
  String technician;
  String tokenHash;
  String tokenPrefix;
  Instant created;

  /** By what a provider of log-ins knows the person; null where it does not. */
  String login;

  /** Null for a token that does not end. */
  Instant expires;

  Instant revoked;
  Instant lastUsed;

  Account read() {
    return new Account(id, name, Role.of(role), customer, technician);
  }

  /** A new token in the place of the one it had; it counts from now on. */
  void token(Secret token, Instant until) {
    tokenHash = token.hash();
    tokenPrefix = token.prefix();
    expires = until;
    revoked = null;
  }

  /** Why the token does not count; empty where it does. */
  String ended(Instant now) {
    if (revoked != null) {
      return "revoked";
    }
    return expires != null && !now.isBefore(expires) ? "expired" : "";
  }
}
