package coldround.rounds.edge;

import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a caller asks to be planned.
 *
 * @param technicians codes; none for all
 * @param customers codes; none for all
 * @param seconds time to search
 * @param daysOff by code of the technician
 * @param holidays days on which nobody works whose hours do not say what holds on public holidays
 * @param starts where a technician's day starts, by code; home unless said
 * @param ends where it ends
 */
record RoundRequest(
    LocalDate from,
    LocalDate to,
    List<String> technicians,
    List<String> customers,
    int seconds,
    long seed,
    Map<String, Set<LocalDate>> daysOff,
    Set<LocalDate> holidays,
    Map<String, Station> starts,
    Map<String, Station> ends) {

  RoundRequest {
    // plans stored before these could be asked
    holidays = holidays == null ? Set.of() : holidays;
    starts = starts == null ? Map.of() : starts;
    ends = ends == null ? Map.of() : ends;
  }

  RoundRequest(
      LocalDate from,
      LocalDate to,
      List<String> technicians,
      List<String> customers,
      int seconds,
      long seed,
      Map<String, Set<LocalDate>> daysOff) {
    this(from, to, technicians, customers, seconds, seed, daysOff, Set.of(), Map.of(), Map.of());
  }

  private static final int MOST_DAYS = 31;
  private static final int USUAL_DAYS = 5;
  private static final int MOST_SECONDS = 3600;
  private static final int USUAL_SECONDS = 30;

  /**
   * Everybody, with the usual time.
   *
   * @throws Problem for days that cannot be planned
   */
  static RoundRequest usual(LocalDate from, LocalDate to, LocalDate today) {
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    body.put("from", from.toString()).put("to", to.toString());
    return new Reading(body).read(today, Set.of(), Set.of());
  }

  /** The same for all customers: where an emergency may be. */
  RoundRequest everywhere() {
    return new RoundRequest(
        from, to, technicians, List.of(), seconds, seed, daysOff, holidays, starts, ends);
  }

  /** Reads the body of a call and collects all that is wrong with it. */
  static final class Reading {
    private final JsonNode body;
    private final List<FieldError> errors = new ArrayList<>();

    Reading(JsonNode body) {
      this.body = body;
    }

    /**
     * @param today first day unless said otherwise
     * @throws Problem that names every wrong field
     */
    RoundRequest read(LocalDate today, Set<String> technicians, Set<String> customers) {
      return read(today, technicians, customers, technicians);
    }

    /**
     * @param places codes of places where a day may start or end
     */
    RoundRequest read(
        LocalDate today, Set<String> technicians, Set<String> customers, Set<String> places) {
      if (body == null || !body.isObject()) {
        throw Problem.badField("", "", "is a JSON object such as {\"from\": \"2026-05-04\"}");
      }
      LocalDate from = date("from", body.path("from"), today);
      LocalDate to = date("to", body.path("to"), from.plusDays(USUAL_DAYS - 1L));
      if (to.isBefore(from)) {
        errors.add(new FieldError("to", to.toString(), "lies before the first day"));
      } else if (from.plusDays(MOST_DAYS).isBefore(to.plusDays(1))) {
        errors.add(new FieldError("to", to.toString(), "is at most 30 days after the first day"));
      }
      if (to.isBefore(today)) {
        errors.add(new FieldError("to", to.toString(), "has passed: today is " + today));
      }
      RoundRequest request =
          new RoundRequest(
              from,
              to,
              codes("technicians", technicians),
              codes("customers", customers),
              (int) whole("seconds", 1, MOST_SECONDS, USUAL_SECONDS),
              whole("seed", Long.MIN_VALUE, Long.MAX_VALUE, 1),
              daysOff(technicians),
              holidays(),
              new Stations(body, errors).read("starts", technicians, places),
              new Stations(body, errors).read("ends", technicians, places));
      if (!errors.isEmpty()) {
        throw Problem.badFields(errors);
      }
      return request;
    }

    /** The same request with other seconds and seed, where the body names them. */
    RoundRequest again(RoundRequest before) {
      if (body == null || !body.isObject()) {
        throw Problem.badField("", "", "is a JSON object, which may be empty: {}");
      }
      int seconds = (int) whole("seconds", 1, MOST_SECONDS, before.seconds);
      long seed = whole("seed", Long.MIN_VALUE, Long.MAX_VALUE, before.seed);
      if (!errors.isEmpty()) {
        throw Problem.badFields(errors);
      }
      return new RoundRequest(
          before.from,
          before.to,
          before.technicians,
          before.customers,
          seconds,
          seed,
          before.daysOff,
          before.holidays,
          before.starts,
          before.ends);
    }

    /** The ids of emergencies that a plan made anew is to leave away. */
    Set<String> withdrawn() {
      Set<String> ids = new TreeSet<>();
      JsonNode node = body.path("withdrawn");
      boolean list = node.isMissingNode() || node.isNull() || node.isArray();
      node.forEach(id -> ids.add(id.asText()));
      if (!list || ids.contains("")) {
        throw Problem.badField("withdrawn", node.toString(), "is a list of ids of emergencies");
      }
      return ids;
    }

    private LocalDate date(String field, JsonNode node, LocalDate unsaid) {
      if (node.isMissingNode() || node.isNull()) {
        return unsaid;
      }
      try {
        LocalDate day = LocalDate.parse(node.asText());
        if (day.getYear() >= 1900 && day.getYear() < 3000) {
          return day;
        }
      } catch (DateTimeParseException e) {
        // told below
      }
      errors.add(new FieldError(field, node.asText(), "is a day such as 2026-05-31"));
      return unsaid;
    }

    private long whole(String field, long least, long most, long unsaid) {
      JsonNode node = body.path(field);
      if (node.isMissingNode() || node.isNull()) {
        return unsaid;
      }
      if (node.isIntegralNumber()
          && node.canConvertToLong()
          && node.asLong() >= least
          && node.asLong() <= most) {
        return node.asLong();
      }
      String range = "is a whole number from " + least + " to " + most;
      errors.add(new FieldError(field, node.asText(), range));
      return unsaid;
    }

    private List<String> codes(String field, Set<String> known) {
      JsonNode node = body.path(field);
      if (node.isMissingNode() || node.isNull()) {
        return List.of();
      }
      if (!node.isArray() || node.isEmpty()) {
        errors.add(
            new FieldError(field, node.toString(), "is a list of codes; leave it out for all"));
        return List.of();
      }
      List<String> codes = new ArrayList<>();
      for (int i = 0; i < node.size(); i++) {
        String code = node.get(i).asText();
        if (!node.get(i).isTextual() || !known.contains(code)) {
          errors.add(new FieldError(field + "[" + i + "]", code, "is not known"));
        } else if (!codes.contains(code)) {
          codes.add(code);
        }
      }
      return codes;
    }

    private Map<String, Set<LocalDate>> daysOff(Set<String> technicians) {
      JsonNode node = body.path("daysOff");
      Map<String, Set<LocalDate>> daysOff = new TreeMap<>();
      if (node.isMissingNode() || node.isNull()) {
        return daysOff;
      }
      if (!node.isObject()) {
        String shape = "is an object such as {\"T1\": [\"2026-05-31\"]}";
        errors.add(new FieldError("daysOff", node.toString(), shape));
      }
      node.fields().forEachRemaining(entry -> off(entry, technicians, daysOff));
      return daysOff;
    }

    private Set<LocalDate> holidays() {
      Set<LocalDate> days = new TreeSet<>();
      JsonNode node = body.path("holidays");
      if (!node.isMissingNode() && !node.isNull() && !node.isArray()) {
        errors.add(new FieldError("holidays", node.toString(), "is a list of days"));
      }
      for (int i = 0; node.isArray() && i < node.size(); i++) {
        LocalDate day = date("holidays[" + i + "]", node.get(i), null);
        if (day != null) {
          days.add(day);
        }
      }
      return days;
    }

    private void off(
        Map.Entry<String, JsonNode> entry,
        Set<String> technicians,
        Map<String, Set<LocalDate>> daysOff) {
      String field = "daysOff." + entry.getKey();
      if (!technicians.contains(entry.getKey())) {
        errors.add(new FieldError(field, entry.getKey(), "is not the code of a technician"));
      }
      if (!entry.getValue().isArray()) {
        errors.add(new FieldError(field, entry.getValue().toString(), "is a list of days"));
      }
      Set<LocalDate> days = new TreeSet<>();
      for (int i = 0; entry.getValue().isArray() && i < entry.getValue().size(); i++) {
        LocalDate day = date(field + "[" + i + "]", entry.getValue().get(i), null);
        if (day != null) {
          days.add(day);
        }
      }
      daysOff.put(entry.getKey(), days);
    }
  }
}
