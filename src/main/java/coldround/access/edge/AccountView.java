package coldround.access.edge;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.Objects;

/**
 * An account as answers tell it.
 *
 * @param state valid, expired or revoked
 * @param tokenPrefix beginning of its token, to know it by
 * @param login by what a provider of log-ins knows the person; left out where it does not
 * @param token told once, when it is made; left out otherwise
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record AccountView(
    String id,
    String name,
    String role,
    String customer,
    String technician,
    String state,
    String tokenPrefix,
    Instant made,
    Instant expires,
    Instant revoked,
    Instant lastUsed,
    String login,
    String token) {

  /** Another one once somebody has given it another token, another log-in or an end. */
  String mark() {
    return Integer.toHexString(Objects.hash(tokenPrefix, expires, login, revoked));
  }

  static AccountView of(AccountRow row, Instant now, String token) {
    String ended = row.ended(now);
    return new AccountView(
        row.id,
        row.name,
        row.role,
        row.customer,
        row.technician,
        ended.isEmpty() ? "valid" : ended,
        row.tokenPrefix,
        row.created,
        row.expires,
        row.revoked,
        row.lastUsed,
        row.login,
        token);
  }
}
