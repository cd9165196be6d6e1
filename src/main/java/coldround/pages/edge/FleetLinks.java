package coldround.pages.edge;

import coldround.quantity.MeasureSystem;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Search;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Addresses of the fleet list and of units that keep what the reader has chosen. */
public record FleetLinks(Search search, Order order, MeasureSystem system) {

  /** The same search, from the beginning. */
  public String first() {
    return address("/", parameters());
  }

  /** The same search, behind that place. */
  public String following(String cursor) {
    Map<String, String> parameters = parameters();
    parameters.put("after", cursor);
    return address("/", parameters);
  }

  /** The whole fleet, worst first. */
  public String all() {
    return address("/", chosenMeasures());
  }

  public String unit(String id) {
    return address("/units/" + encoded(id), chosenMeasures());
  }

  /** Only the units of one site. */
  public String site(String customer, String site) {
    Map<String, String> parameters = new LinkedHashMap<>();
    parameters.put("customer", customer);
    parameters.put("site", site);
    parameters.putAll(chosenMeasures());
    return address("/", parameters);
  }

  public String orderCode() {
    return order.name().toLowerCase(Locale.ROOT);
  }

  public boolean si() {
    return system == MeasureSystem.SI;
  }

  /** True when something is looked for. */
  public boolean searching() {
    return !search.equals(new Search("", "", "", "", "", ""));
  }

  private Map<String, String> parameters() {
    Map<String, String> parameters = new LinkedHashMap<>();
    parameters.put("q", search.text());
    parameters.put("customer", search.customer());
    parameters.put("site", search.site());
    parameters.put("kind", search.kind());
    parameters.put("refrigerant", search.refrigerant());
    parameters.put("order", order == Order.SCORE ? "" : orderCode());
    parameters.putAll(chosenMeasures());
    return parameters;
  }

  private Map<String, String> chosenMeasures() {
    return system == MeasureSystem.US ? Map.of() : Map.of("measures", "si");
  }

  private static String address(String path, Map<String, String> parameters) {
    String query =
        parameters.entrySet().stream()
            .filter(parameter -> !parameter.getValue().isEmpty())
            .map(parameter -> parameter.getKey() + "=" + encoded(parameter.getValue()))
            .collect(Collectors.joining("&"));
    return query.isEmpty() ? path : path + "?" + query;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }
}
