package coldround.access.edge;

/**
 * An account that is asked for.
 *
 * @param role planner, technician, customer or scheduler
 * @param customer code; for a customer alone
 * @param technician code; for a technician alone
 * @param expires moment as in RFC 3339; a year from now when left out
 * @param login by what a provider of log-ins (OpenID Connect) knows the person, such as the e-mail
 *     address; left out where the token is the only way in
 */
public record AccountBody(
    String name, String role, String customer, String technician, String expires, String login) {

  /**
   * What may be said when a token is renewed.
   *
   * @param expires moment as in RFC 3339; a year from now when left out
   */
  public record Renewal(String expires) {}

  /**
   * How the person of an account logs in at a provider.
   *
   * @param login the e-mail address or what else the provider is asked for; empty to end it
   */
  public record Login(String login) {}
}
