package coldround.scoring.edge;

import coldround.fleet.UnitIds;
import coldround.scoring.FleetList.Order;
import coldround.scoring.FleetList.Place;
import coldround.scoring.FleetList.Search;
import coldround.store.ByKeys;
import jakarta.persistence.Query;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The conditions of one search of the fleet list, as SQL over the tables themselves. A list of a
 * hundred thousand is found by its narrow index first, and only the lines shown are read in full;
 * what no condition needs is not joined.
 */
final class FleetQuery {

  /** Of units by id: what {@code assessment.words} keeps. */
  static final ByKeys WORDS =
      ByKeys.ids(
          "select u.id, lower(concat(u.tag, ' ', u.kind, ' ', u.maker, ' ', u.model, ' ',"
              + " u.refrigerant, ' ', c.code, ' ', c.name, ' ', s.code, ' ', s.name)) from unit u join"
              + " site s on s.id = u.site_id join customer c on c.id = s.customer_id"
              + " where u.id = any(cast(? as bigint array))");

  private final List<String> conditions = new ArrayList<>();
  private final Map<String, Object> parameters = new LinkedHashMap<>();
  private boolean unit;
  private boolean site;
  private boolean worded;

  static FleetQuery of(Search search) {
    FleetQuery query = new FleetQuery();
    query.site("c.code", "customer", search.customer());
    query.site("s.code", "site", search.site());
    query.unit("u.kind", "kind", search.kind());
    query.unit("u.refrigerant", "refrigerant", search.refrigerant());
    query.one(search.unit());
    query.words(search.text());
    return query;
  }

  private void site(String column, String name, String value) {
    if (!value.isEmpty()) {
      site = true;
      with(column + " = :" + name, name, value);
    }
  }

  private void unit(String column, String name, String value) {
    if (!value.isEmpty()) {
      unit = true;
      with(column + " = :" + name, name, value);
    }
  }

  private void one(String tagOrId) {
    if (!tagOrId.isEmpty()) {
      unit = true;
      parameters.put("unitId", UnitIds.number(tagOrId).orElse(-1));
      with("(u.tag = :tag or u.id = :unitId)", "tag", tagOrId);
    }
  }

  private void words(String text) {
    int n = 0;
    for (String word : text.toLowerCase(Locale.ROOT).split("\\s+")) {
      if (!word.isEmpty()) {
        worded = true;
        String name = "word" + n++;
        String escaped = word.replaceAll("([%_!])", "!$1");
        with("a.words like :" + name + " escape '!'", name, "%" + escaped + "%");
      }
    }
  }

  /** Only lines behind that place in the order. */
  void after(Order order, Place place) {
    parameters.put("id", UnitIds.number(place.unitId()).orElse(-1));
    switch (order) {
      case SCORE -> with("a.score >= :p and (a.score > :p or a.unit_id > :id)", "p", place.score());
      case DUE -> afterDue(place.nextDue());
      case NAME -> {
        parameters.put("afterSite", place.site());
        parameters.put("afterTag", place.tag());
        with(
            "c.code >= :p and (c.code > :p or s.code > :afterSite or s.code = :afterSite and"
                + " (u.tag > :afterTag or u.tag = :afterTag and a.unit_id > :id))",
            "p",
            place.customer());
      }
    }
  }

  // a unit with nothing due comes after all that have a date
  private void afterDue(LocalDate due) {
    if (due == null) {
      conditions.add("a.next_due is null and a.unit_id > :id");
    } else {
      with(
          "(a.next_due is null or a.next_due > :p or a.next_due = :p and a.unit_id > :id)",
          "p",
          due);
    }
  }

  private void with(String condition, String name, Object value) {
    conditions.add(condition);
    parameters.put(name, value);
  }

  /** The units found, in that order. */
  String ids(Order order) {
    return "select a.unit_id" + from(order == Order.NAME) + where() + orderBy(order);
  }

  String count() {
    return "select count(*)" + from(false) + where();
  }

  private String from(boolean named) {
    String joined = unit || site || named ? " join unit u on u.id = a.unit_id" : "";
    String placed =
        site || named
            ? " join site s on s.id = u.site_id join customer c on c.id = s.customer_id"
            : "";
    return " from assessment a" + joined + placed;
  }

  private String where() {
    return conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions);
  }

  // words are rare or frequent, nobody knows: one look through the table is never slow, while a
  // walk along the index of an order looks up each row before it finds the few, so that order is
  // hidden from it
  private String orderBy(Order order) {
    return switch (order) {
      case SCORE -> " order by a.score" + (worded ? " + 0" : "") + ", a.unit_id";
      case DUE ->
          worded
              ? " order by coalesce(a.next_due, date '9999-12-31'), a.unit_id"
              : " order by a.next_due nulls last, a.unit_id";
      case NAME -> " order by c.code, s.code, u.tag, a.unit_id";
    };
  }

  Query bind(Query query) {
    parameters.forEach(query::setParameter);
    return query;
  }
}
