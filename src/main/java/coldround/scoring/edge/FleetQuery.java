package coldround.scoring.edge;

import coldround.fleet.UnitIds;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Place;
import coldround.scoring.FleetList.Search;
import jakarta.persistence.TypedQuery;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The conditions of one search of the fleet list, as JPQL with parameters. */
final class FleetQuery {

  private static final String WORDS =
      "lower(concat(f.customer,' ',f.customerName,' ',f.site,' ',f.siteName,' ',f.tag,' ',f.kind,"
          + "' ',f.maker,' ',f.model,' ',f.refrigerant))";

  private final List<String> conditions = new ArrayList<>();
  private final Map<String, Object> parameters = new LinkedHashMap<>();

  static FleetQuery of(Search search) {
    FleetQuery query = new FleetQuery();
    query.equal("customer", search.customer());
    query.equal("site", search.site());
    query.equal("kind", search.kind());
    query.equal("refrigerant", search.refrigerant());
    query.unit(search.unit());
    query.words(search.text());
    return query;
  }

  private void equal(String field, String value) {
    if (!value.isEmpty()) {
      with("f." + field + " = :" + field, field, value);
    }
  }

  private void unit(String unit) {
    if (!unit.isEmpty()) {
      parameters.put("unitId", UnitIds.number(unit).orElse(-1));
      with("(f.tag = :tag or f.unitId = :unitId)", "tag", unit);
    }
  }

  private void words(String text) {
    int n = 0;
    for (String word : text.toLowerCase(Locale.ROOT).split("\\s+")) {
      if (!word.isEmpty()) {
        String name = "word" + n++;
        String escaped = word.replaceAll("([%_!])", "!$1");
        with(WORDS + " like :" + name + " escape '!'", name, "%" + escaped + "%");
      }
    }
  }

  /** Only lines behind that place in the order. */
  void after(Order order, Place place) {
    parameters.put("id", UnitIds.number(place.unitId()).orElse(-1));
    switch (order) {
      case SCORE -> with("(f.score > :p or f.score = :p and f.unitId > :id)", "p", place.score());
      case DUE -> afterDue(place.nextDue());
      case NAME -> {
        parameters.put("afterSite", place.site());
        parameters.put("afterTag", place.tag());
        with(
            "(f.customer > :p or f.customer = :p and (f.site > :afterSite or f.site = :afterSite"
                + " and (f.tag > :afterTag or f.tag = :afterTag and f.unitId > :id)))",
            "p",
            place.customer());
      }
    }
  }

  // a unit with nothing due comes after all that have a date
  private void afterDue(LocalDate due) {
    if (due == null) {
      conditions.add("f.nextDue is null and f.unitId > :id");
    } else {
      with("(f.nextDue is null or f.nextDue > :p or f.nextDue = :p and f.unitId > :id)", "p", due);
    }
  }

  private void with(String condition, String name, Object value) {
    conditions.add(condition);
    parameters.put(name, value);
  }

  String where() {
    return conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions);
  }

  static String orderBy(Order order) {
    return switch (order) {
      case SCORE -> " order by f.score, f.unitId";
      case DUE -> " order by f.nextDue nulls last, f.unitId";
      case NAME -> " order by f.customer, f.site, f.tag, f.unitId";
    };
  }

  <T> TypedQuery<T> bind(TypedQuery<T> query) {
    parameters.forEach(query::setParameter);
    return query;
  }
}
