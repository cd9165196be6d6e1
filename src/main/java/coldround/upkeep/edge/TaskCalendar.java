package coldround.upkeep.edge;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.StandardTime;
import biweekly.component.VEvent;
import biweekly.component.VTimezone;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.Geo;
import biweekly.property.Status;
import biweekly.property.Transparency;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import biweekly.util.UtcOffset;
import coldround.fleet.Site;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Task;
import coldround.upkeep.TaskCatalogue;
import coldround.upkeep.TaskReason;
import coldround.upkeep.edge.CalendarEntries.CalendarEntry;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;

/**
 * Tasks as a calendar to subscribe to (RFC 5545): on their due day until they are booked, then at
 * their hour; once done, on the day they were done. It has no METHOD: it is read, not mailed.
 */
final class TaskCalendar {

  private static final String PRODUCT = "-//Coldround//Upkeep tasks//EN";

  private final TaskCatalogue catalogue;

  TaskCalendar(TaskCatalogue catalogue) {
    this.catalogue = catalogue;
  }

  byte[] write(List<CalendarEntry> entries) {
    ICalendar calendar = new ICalendar();
    calendar.setProductId(PRODUCT);
    entries.forEach(entry -> calendar.addEvent(event(entry)));
    if (entries.isEmpty()) {
      calendar.addComponent(universalTime());
    }
    return FoldedLines.of(Biweekly.write(calendar).go());
  }

  /** A calendar must have a component (RFC 5545, section 3.6), also when there is nothing to do. */
  private static VTimezone universalTime() {
    StandardTime always = new StandardTime();
    always.setDateStart(new DateTimeComponents(1970, 1, 1, 0, 0, 0, false));
    always.setTimezoneOffsetFrom(new UtcOffset(true, 0, 0));
    always.setTimezoneOffsetTo(new UtcOffset(true, 0, 0));
    VTimezone zone = new VTimezone("Etc/UTC");
    zone.addStandardTime(always);
    return zone;
  }

  private VEvent event(CalendarEntry entry) {
    VEvent event = new VEvent();
    event.setUid(entry.id() + "@coldround");
    // without a METHOD it is when the task was last changed, so an unchanged calendar stays the
    // same
    event.setDateTimeStamp(Date.from(entry.changed()));
    event.setLastModified(Date.from(entry.changed()));
    event.setSequence(entry.sequence());
    event.setSummary(summary(entry));
    event.addCategories(entry.task());
    when(entry, event);
    status(entry, event);
    if (entry.placed() != null) {
      describe(entry.placed().task(), event);
      place(entry.placed().site(), event);
    }
    return event;
  }

  private String summary(CalendarEntry entry) {
    String name = catalogue.get(entry.task()).name();
    String done = entry.outcome().equals(ClosedTaskRow.COMPLETED) ? "Done: " : "";
    return "%s%s, %s %s %s"
        .formatted(done, name, entry.place().customer, entry.place().site, entry.place().tag);
  }

  private static void when(CalendarEntry entry, VEvent event) {
    if (isAtItsHour(entry)) {
      Instant start = entry.booking().start().toInstant();
      event.setDateStart(new DateStart(Date.from(start), true));
      event.setDuration(Duration.builder().minutes(entry.minutes()).build());
    } else {
      LocalDate day = entry.done() == null ? entry.due() : entry.done();
      event.setDateStart(new DateStart(day(day)));
      event.setDateEnd(new DateEnd(day(day.plusDays(1))));
    }
  }

  /** One that was done on another day than it was booked for takes no hour of that day. */
  private static boolean isAtItsHour(CalendarEntry entry) {
    return entry.booking() != null
        && (entry.done() == null || entry.done().equals(entry.booking().start().toLocalDate()));
  }

  /** A day of no zone. */
  private static ICalDate day(LocalDate day) {
    return new ICalDate(
        new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()), false);
  }

  private static void status(CalendarEntry entry, VEvent event) {
    if (entry.outcome().equals(ClosedTaskRow.WITHDRAWN)) {
      event.setStatus(Status.cancelled());
    } else {
      boolean sure = entry.booking() != null || !entry.outcome().isEmpty();
      event.setStatus(sure ? Status.confirmed() : Status.tentative());
    }
    // a due day leaves the technician free, and so does what is done or off
    boolean busy = entry.booking() != null && entry.outcome().isEmpty();
    event.setTransparency(busy ? Transparency.opaque() : Transparency.transparent());
  }

  private static void describe(Task task, VEvent event) {
    List<String> lines = new ArrayList<>();
    lines.add("Due %s, from %s to %s.".formatted(task.due(), task.earliest(), task.latest()));
    for (TaskReason reason : task.reasons()) {
      lines.add(reason.date() + ": " + reason.reason().text(MeasureSystem.US) + ".");
    }
    lines.addAll(task.cautions());
    event.setDescription(String.join("\n", lines));
  }

  private static void place(Site site, VEvent event) {
    String address = site.address().isEmpty() ? site.name() : site.address();
    if (!address.isEmpty()) {
      event.setLocation(address);
    }
    if (site.latitude() != null && site.longitude() != null) {
      event.setGeo(new Geo(site.latitude(), site.longitude()));
    }
  }
}
