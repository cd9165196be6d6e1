package coldround.upkeep.edge;

import coldround.fleet.UnitIds;
import coldround.http.Problem;
import coldround.upkeep.Booking;
import coldround.upkeep.edge.TasksOfToday.Placed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which tasks a calendar is to show: the open ones, and those that lately came to an end. */
@ApplicationScoped
class CalendarEntries {

  /**
   * Whose tasks, and how far; an empty text asks for all.
   *
   * @param to last due date
   * @param closedSince tasks that came to an end before are not shown any more
   */
  record Search(
      String customer, String site, String technician, LocalDate to, Instant closedSince) {}

  /**
   * One task as a calendar shows it.
   *
   * @param outcome empty while it is open, else withdrawn or completed
   * @param booking null for none
   * @param done day of the visit that did it; null for none
   * @param placed its reasons and its site; null when it is no longer open
   */
  record CalendarEntry(
      String id,
      String unitId,
      String task,
      LocalDate due,
      int minutes,
      int sequence,
      Instant changed,
      String outcome,
      TaskPlaceRow place,
      Booking booking,
      LocalDate done,
      Placed placed) {}

  private static final int MOST = 5000;
  private static final String OPEN =
      "select t, f, b from TaskRow t join TaskPlaceRow f on f.unitId = t.unitId"
          + " left join BookingRow b on b.taskId = t.id where t.due <= :limit";
  private static final String CLOSED =
      "select t, f, b, c from ClosedTaskRow t join TaskPlaceRow f on f.unitId = t.unitId"
          + " left join BookingRow b on b.taskId = t.id"
          + " left join CompletionRow c on c.taskId = t.id where t.changed >= :limit";
  // the name b is that of where the technician stands
  private static final String LEFT =
      "select b, f from LeftTaskRow b join TaskPlaceRow f on f.unitId = b.unitId"
          + " where b.changed >= :limit";

  private final EntityManager entities;
  private final TasksOfToday tasks;

  @Inject
  CalendarEntries(EntityManager entities, TasksOfToday tasks) {
    this.entities = entities;
    this.tasks = tasks;
  }

  /** By due date; those that left the calendar of a technician come last. */
  @Transactional
  List<CalendarEntry> find(Search search) {
    List<Object[]> open = rows(OPEN, "t.due, t.id", search.to(), search);
    List<Object[]> closed = rows(CLOSED, "t.due, t.id", search.closedSince(), search);
    // only the calendar of a technician can be left
    List<Object[]> left =
        isGiven(search.technician())
            ? rows(LEFT, "b.starts, b.taskId", search.closedSince(), search)
            : List.of();
    if (open.size() + closed.size() + left.size() > MOST) {
      throw Problem.unprocessable(
          "calendar-too-large",
          "There are too many tasks for one calendar",
          "More than %d tasks are asked for. Name a customer, a site or a technician, or an earlier to."
              .formatted(MOST));
    }
    Map<String, Placed> placed =
        tasks.of(open.stream().map(row -> UnitIds.text(((TaskRow) row[0]).unitId)).toList());
    List<CalendarEntry> entries = new ArrayList<>();
    open.forEach(row -> entries.add(open((TaskRow) row[0], row, placed)));
    closed.forEach(row -> entries.add(closed((ClosedTaskRow) row[0], row)));
    left.forEach(row -> entries.add(left((LeftTaskRow) row[0], row)));
    return entries;
  }

  private static boolean isGiven(String text) {
    return text != null && !text.isEmpty();
  }

  private List<Object[]> rows(String select, String order, Object limit, Search search) {
    Map<String, String> filters = new TreeMap<>();
    Stream.of(
            new String[] {"f.customer", "customer", search.customer()},
            new String[] {"f.site", "site", search.site()},
            new String[] {"b.technician", "technician", search.technician()})
        .filter(filter -> isGiven(filter[2]))
        .forEach(filter -> filters.put(filter[0] + " = :" + filter[1], filter[2]));
    String where =
        filters.keySet().stream().map(filter -> " and " + filter).collect(Collectors.joining());
    TypedQuery<Object[]> query =
        entities.createQuery(select + where + " order by " + order, Object[].class);
    query.setParameter("limit", limit);
    filters.forEach((filter, value) -> query.setParameter(filter.split(":")[1], value));
    return query.setMaxResults(MOST + 1).getResultList();
  }

  private static CalendarEntry open(TaskRow task, Object[] row, Map<String, Placed> placed) {
    return new CalendarEntry(
        task.id,
        UnitIds.text(task.unitId),
        task.task,
        task.due,
        task.minutes,
        task.sequence,
        task.changed,
        "",
        (TaskPlaceRow) row[1],
        booking(row),
        null,
        placed.get(task.id));
  }

  private static CalendarEntry closed(ClosedTaskRow task, Object[] row) {
    return new CalendarEntry(
        task.id,
        UnitIds.text(task.unitId),
        task.task,
        task.due,
        task.minutes,
        task.sequence,
        task.changed,
        task.outcome,
        (TaskPlaceRow) row[1],
        booking(row),
        row[3] == null ? null : ((CompletionRow) row[3]).completed,
        null);
  }

  private static CalendarEntry left(LeftTaskRow task, Object[] row) {
    Booking booking = task.booking();
    return new CalendarEntry(
        task.taskId,
        UnitIds.text(task.unitId),
        task.task,
        booking.start().toLocalDate(),
        task.minutes,
        task.sequence,
        task.changed,
        ClosedTaskRow.WITHDRAWN,
        (TaskPlaceRow) row[1],
        booking,
        null,
        null);
  }

  private static Booking booking(Object[] row) {
    return row[2] == null ? null : ((BookingRow) row[2]).read();
  }
}
