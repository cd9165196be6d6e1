package coldround.access;

/**
 * A reason why a technician may look at the units of a site; there may be several. It follows from
 * the store and the day: what is given again is not asked for its reason again on the same day.
 */
public interface SiteGrants {

  boolean grants(String technician, String customer, String site);
}
