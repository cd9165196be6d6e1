package coldround.rounds.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.VEvent;

/**
 * RFC 5545 by ical4j, which did not write the calendar, and the rules of bytes that no library
 * checks.
 */
final class CalendarRules {

  private CalendarRules() {}

  /** The begins of the events of a calendar without a fault. */
  static List<Instant> events(byte[] bytes) throws Exception {
    lines(bytes);
    Calendar calendar = new CalendarBuilder().build(new ByteArrayInputStream(bytes));
    assertFalse(calendar.validate().hasErrors(), calendar.validate().toString());
    Set<String> uids = new HashSet<>();
    List<Instant> begins = new ArrayList<>();
    for (Component component : calendar.getComponents(Component.VEVENT)) {
      VEvent event = (VEvent) component;
      assertTrue(uids.add(event.getUid().orElseThrow().getValue()));
      Instant begin = instant(event.getDateTimeStart().getDate());
      assertTrue(instant(event.getDateTimeEnd().getDate()).isAfter(begin));
      assertFalse(event.getSummary().getValue().isBlank());
      begins.add(begin);
    }
    return begins;
  }

  private static Instant instant(TemporalAccessor date) {
    return Instant.from(date);
  }

  // RFC 5545, section 3.1: CRLF, at most 75 octets a line, whole characters, no byte order mark
  private static void lines(byte[] bytes) throws Exception {
    assertEquals('B', bytes[0]);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    assertEquals(text.replace("\r\n", "").length(), text.replaceAll("[\r\n]", "").length());
    assertTrue(text.endsWith("\r\n"));
    for (String line : text.split("\r\n")) {
      assertTrue(line.length() <= 75, line);
      byte[] octets = line.getBytes(StandardCharsets.ISO_8859_1);
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(octets));
    }
  }
}
