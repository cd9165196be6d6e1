package coldround.access;

/** A reason why a technician may look at the units of a site; there may be several. */
public interface SiteGrants {

  boolean grants(String technician, String customer, String site);
}
