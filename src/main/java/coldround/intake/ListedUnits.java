package coldround.intake;

import coldround.fleet.UnitNames;
import coldround.fleet.UnitNames.UnitName;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Which units a list of units names, on rows that were taken and on rows that were not. */
final class ListedUnits {

  private final Set<String> customers = new TreeSet<>();
  private final Set<String> sites = new HashSet<>();
  private final SeenKeys units = new SeenKeys();

  /**
   * @param said columns of a row as far as they could be read
   */
  void note(Map<String, Object> said) {
    String customer = text(said, "customer");
    String site = text(said, "site");
    if (customer.isEmpty() || site.isEmpty()) {
      return;
    }
    customers.add(customer);
    sites.add(key(customer, site, ""));
    for (String column : List.of("unit", "previous_tag")) {
      String tag = text(said, column);
      if (!tag.isEmpty()) {
        units.note(key(customer, site, tag), 0, 1);
      }
    }
  }

  private static String text(Map<String, Object> said, String column) {
    return said.get(column) instanceof String text ? text : "";
  }

  private static String key(String customer, String site, String tag) {
    return customer + '\u0001' + site + '\u0001' + tag;
  }

  /** What is in use and not on the list. */
  Vanished missing(UnitNames names) {
    Missing missing = new Missing();
    names.inUse(customers, missing::look);
    missing.endSite();
    return new Vanished(missing.count, missing.units, missing.siteCount, missing.places);
  }

  /** Units come site by site. */
  private final class Missing {
    private final List<UnitName> units = new ArrayList<>();
    private final List<Vanished.Place> places = new ArrayList<>();
    private long count;
    private long siteCount;
    private Vanished.Place open;

    void look(UnitName unit) {
      if (!sites.contains(key(unit.customer(), unit.site(), ""))) {
        elsewhere(unit);
      } else if (!ListedUnits.this.units.has(key(unit.customer(), unit.site(), unit.tag()))) {
        count++;
        if (units.size() < Vanished.MOST) {
          units.add(unit);
        }
      }
    }

    private void elsewhere(UnitName unit) {
      boolean same =
          open != null
              && open.customer().equals(unit.customer())
              && open.site().equals(unit.site());
      if (!same) {
        endSite();
      }
      open = new Vanished.Place(unit.customer(), unit.site(), same ? open.units() + 1 : 1);
    }

    void endSite() {
      if (open != null) {
        siteCount++;
        if (places.size() < Vanished.MOST) {
          places.add(open);
        }
      }
      open = null;
    }
  }
}
