package coldround.pages;

import coldround.scoring.FaultEvent;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws faults on a line of time. */
public final class FaultDrawing {

  private static final double EDGE = 14;
  private static final double LANE = 58;
  private static final double NAME_TO_LINE = 40;
  private static final double BOTTOM = 30;
  private static final double MOST_BOW = 20;
  private static final double ROOM_FOR_A_MONTH = 56;
  private static final long LEAST_DAYS = 365;

  private final List<FaultEvent> events;
  private final LocalDate from;
  private final LocalDate to;
  private final int width;

  private FaultDrawing(List<FaultEvent> events, LocalDate today, int width) {
    this.events = events;
    this.to = today;
    this.width = width;
    LocalDate first = events.get(0).date().withDayOfMonth(1);
    LocalDate latest = today.minusDays(LEAST_DAYS);
    this.from = first.isBefore(latest) ? first : latest;
  }

  /** Empty where there is no fault. */
  public static Optional<FaultPicture> draw(List<FaultEvent> events, LocalDate today, int width) {
    return events.isEmpty()
        ? Optional.empty()
        : Optional.of(new FaultDrawing(events, today, width).picture());
  }

  private FaultPicture picture() {
    Map<String, List<FaultEvent>> byMode = new LinkedHashMap<>();
    events.forEach(
        event -> byMode.computeIfAbsent(event.mode(), mode -> new ArrayList<>()).add(event));
    List<FaultPicture.Lane> lanes = new ArrayList<>();
    byMode.values().stream()
        .sorted(Comparator.comparingInt((List<FaultEvent> its) -> its.size()).reversed())
        .forEach(its -> lanes.add(lane(its, lanes.size())));
    double bottom = lanes.size() * LANE + 4;
    int most = (int) Math.max(2, (width - 2 * EDGE) / ROOM_FOR_A_MONTH);
    return new FaultPicture(
        width,
        (int) (bottom + BOTTOM),
        EDGE,
        width - EDGE,
        bottom,
        Axis.months(from, to, most).stream()
            .map(mark -> new SplitPicture.Mark(x(mark.day()), mark.label()))
            .toList(),
        lanes,
        sentence());
  }

  private double x(LocalDate day) {
    double share =
        (double) ChronoUnit.DAYS.between(from, day)
            / Math.max(1, ChronoUnit.DAYS.between(from, to));
    return Math.round((EDGE + share * (width - 2 * EDGE)) * 10) / 10.0;
  }

  private FaultPicture.Lane lane(List<FaultEvent> its, int n) {
    double y = n * LANE + NAME_TO_LINE;
    return new FaultPicture.Lane(
        Words.title(its.get(0).mode()),
        y,
        its.stream().map(this::event).toList(),
        its.stream().filter(FaultEvent::repeat).map(event -> link(event, y)).toList());
  }

  private FaultPicture.Event event(FaultEvent event) {
    String repeats =
        event.previous().map(before -> ", repeats the one of " + Figures.day(before)).orElse("");
    String held =
        event
            .repairThatDidNotHold()
            .map(day -> "; the repair of " + Figures.day(day) + " did not hold")
            .orElse("");
    String label = Words.title(event.mode()) + ", " + Figures.day(event.date()) + repeats + held;
    return new FaultPicture.Event(x(event.date()), event.repeat(), label);
  }

  private FaultPicture.Link link(FaultEvent event, double y) {
    LocalDate before = event.previous().orElseThrow();
    double left = x(before);
    double right = x(event.date());
    double bow = Math.min(MOST_BOW, Math.max(8, (right - left) / 2));
    String path =
        "M%s %sQ%s %s %s %s"
            .formatted(left, y, Math.round((left + right) * 5) / 10.0, y - 2 * bow, right, y);
    long days = ChronoUnit.DAYS.between(before, event.date());
    return new FaultPicture.Link(
        path, !event.didNotHold(), "Again after " + Words.count(days, "day", "days"));
  }

  private String sentence() {
    long repeats = events.stream().filter(FaultEvent::repeat).count();
    long lost = events.stream().filter(FaultEvent::didNotHold).count();
    return Words.count(events.size(), "fault", "faults")
        + " since "
        + Figures.day(events.get(0).date())
        + ", "
        + Words.count(repeats, "repeat", "repeats")
        + (lost == 0 ? "." : ", " + Words.count(lost, "repair", "repairs") + " that did not hold.");
  }
}
