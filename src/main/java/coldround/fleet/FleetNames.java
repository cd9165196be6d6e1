package coldround.fleet;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What people call customers, sites and technicians; the code where nobody has given a name. Each
 * list is read when it is first asked of, so one of these is for one page.
 */
public final class FleetNames {

  private final Fleet fleet;
  private final Map<String, Map<String, String>> sites = new HashMap<>();
  private Map<String, String> customers;
  private Map<String, String> technicians;

  public FleetNames(Fleet fleet) {
    this.fleet = fleet;
  }

  public String customer(String code) {
    if (customers == null) {
      customers =
          fleet.customers().stream().collect(Collectors.toMap(Customer::code, Customer::name));
    }
    return named(customers.get(code), code);
  }

  /** Without its customer. */
  public String site(String customer, String code) {
    Map<String, String> its =
        sites.computeIfAbsent(
            customer,
            key -> fleet.sites(key).stream().collect(Collectors.toMap(Site::code, Site::name)));
    return named(its.get(code), code);
  }

  /**
   * @param key "customer/site"; the customer's code may itself hold a slash
   * @return name of the site and name of its customer; the key where there is no such site
   */
  public String place(String key) {
    for (int slash = key.indexOf('/'); slash >= 0; slash = key.indexOf('/', slash + 1)) {
      String customer = key.substring(0, slash);
      String code = key.substring(slash + 1);
      site(customer, code);
      if (sites.get(customer).containsKey(code)) {
        return site(customer, code) + ", " + customer(customer);
      }
    }
    return key;
  }

  public String technician(String code) {
    if (technicians == null) {
      technicians =
          fleet.technicians().stream()
              .collect(Collectors.toMap(Technician::code, Technician::name));
    }
    return named(technicians.get(code), code);
  }

  private static String named(String name, String code) {
    return name == null || name.isBlank() ? code : name;
  }
}
