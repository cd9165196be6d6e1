package coldround.rounds.edge;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Geo;
import coldround.quantity.MeasureSystem;
import coldround.rounds.Job;
import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import coldround.rounds.Standing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.stream.Collectors;

/** Stops as events of a calendar (RFC 5545), in UTC so that no time zone has to be described. */
@ApplicationScoped
class RoundCalendar {

  private static final int OCTETS = 75;

  @Inject
  RoundCalendar() {}

  /**
   * @param technician code, empty for all
   */
  byte[] write(Standing standing, RoundPlan plan, String technician) {
    ICalendar calendar = new ICalendar();
    calendar.setVersion(ICalVersion.V2_0);
    calendar.setProductId("-//Coldround//Rounds//EN");
    for (RoundPlan.Round round : plan.rounds()) {
      if (technician.isEmpty() || round.technician().equals(technician)) {
        round.stops().forEach(stop -> calendar.addEvent(event(standing, round, stop)));
      }
    }
    String text = Biweekly.write(calendar).go();
    return folded(text).getBytes(StandardCharsets.UTF_8);
  }

  private static VEvent event(Standing standing, RoundPlan.Round round, RoundPlan.Stop stop) {
    VEvent event = new VEvent();
    event.setUid(stop.call().id() + "." + standing.id() + "@coldround");
    event.setDateTimeStamp(date(standing.requested()));
    event.setSequence(standing.revision());
    event.setDateStart(date(stop.begins()), true);
    event.setDateEnd(date(stop.leaves()), true);
    event.setSummary(name(stop) + ", " + round.technician());
    event.setDescription(description(stop));
    String address = stop.premises().address();
    event.setLocation(address.isEmpty() ? name(stop) : address);
    Place place = stop.premises().place();
    if (place.located()) {
      event.setGeo(new Geo(place.latitude(), place.longitude()));
    }
    return event;
  }

  private static Date date(Instant instant) {
    return Date.from(Instant.ofEpochSecond(Math.round(instant.toEpochMilli() / 1000.0)));
  }

  private static String name(RoundPlan.Stop stop) {
    String name = stop.premises().name();
    return name.isEmpty() ? stop.premises().code() : name;
  }

  private static String description(RoundPlan.Stop stop) {
    return stop.call().jobs().stream().map(RoundCalendar::line).collect(Collectors.joining("\n"));
  }

  private static String line(Job job) {
    String what = job.tag() + ": " + job.kind().replace('-', ' ') + ", " + job.minutes() + " min";
    return job.reasons().isEmpty()
        ? what
        : what + ". " + job.reasons().get(0).text(MeasureSystem.US);
  }

  /** Folded anew: RFC 5545, section 3.1 counts octets, and no character may be cut. */
  private static String folded(String text) {
    StringBuilder folded = new StringBuilder();
    for (String line : text.replaceAll("\r?\n[ \t]", "").split("\r?\n")) {
      int octets = 0;
      for (int i = 0; i < line.length(); ) {
        int point = line.codePointAt(i);
        int size = Character.toString(point).getBytes(StandardCharsets.UTF_8).length;
        if (octets + size > OCTETS) {
          folded.append("\r\n ");
          octets = 1;
        }
        folded.appendCodePoint(point);
        octets += size;
        i += Character.charCount(point);
      }
      folded.append("\r\n");
    }
    return folded.toString();
  }
}
