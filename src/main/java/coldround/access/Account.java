package coldround.access;

/**
 * A person or program that may use the service.
 *
 * @param customer code of the customer that a customer's account belongs to; empty for others
 * @param technician code of the technician that a technician's account belongs to; empty for others
 */
public record Account(String id, String name, Role role, String customer, String technician) {

  /** What the service does of itself. */
  public static final Account SERVICE = new Account("service", "Service", Role.PLANNER, "", "");

  public boolean is(Role its) {
    return role == its;
  }
}
