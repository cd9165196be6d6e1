package coldround.access.edge;

/**
 * An account that is asked for.
 *
 * @param role planner, technician, customer or scheduler
 * @param customer code; for a customer alone
 * @param technician code; for a technician alone
 * @param expires moment as in RFC 3339; a year from now when left out
 */
public record AccountBody(
    String name, String role, String customer, String technician, String expires) {

  /**
   * What may be said when a token is renewed.
   *
   * @param expires moment as in RFC 3339; a year from now when left out
   */
  public record Renewal(String expires) {}
}
