package coldround.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The sites of a plan: where they are, when they may be visited, and what is wrong with them. */
final class SiteBook {

  private final Order order;
  private final double farKm;
  private final Map<String, Premises> sites = new HashMap<>();
  private final Map<String, OpeningHours> hours = new HashMap<>();
  private final Map<String, Note> faults = new HashMap<>();

  /**
   * @param farKm straight way to the nearest start of a day beyond which a site is misplaced
   */
  SiteBook(Order order, Travel travel, double farKm) {
    this.order = order;
    this.farKm = farKm;
    for (Premises site : order.premises()) {
      sites.put(site.code(), site);
      Note fault = fault(site, travel);
      if (fault != null) {
        faults.put(site.code(), fault);
      }
    }
  }

  private Note fault(Premises site, Travel travel) {
    String subject = "site " + site.code();
    if (!site.place().located() && !travel.knows(site.place())) {
      String message =
          site.place().fault() + ", and has no imported travel time: give its coordinates.";
      return new Note("no-coordinates", subject, message);
    }
    if (site.place().located() && !travel.knows(site.place()) && misplaced(site.place())) {
      String message =
          "lies %.0f km from where the nearest technician starts, at %s, %s: is that in the sea, are latitude and longitude swapped, or is a sign missing?"
              .formatted(
                  nearestKm(site.place()), site.place().latitude(), site.place().longitude());
      return new Note("misplaced", subject, message);
    }
    try {
      OpeningHours open =
          site.hours().isBlank() ? OpeningHours.always() : OpeningHours.parse(site.hours());
      hours.put(site.code(), open);
      return open.neverOpen()
          ? new Note("never-open", subject, "is never open: the visiting hours say only off.")
          : null;
    } catch (IllegalArgumentException e) {
      return new Note("hours-unreadable", subject, "cannot be visited: " + e.getMessage());
    }
  }

  private boolean misplaced(Place place) {
    double km = nearestKm(place);
    return km > farKm && km < Double.POSITIVE_INFINITY;
  }

  /** Infinite when nobody's start is known. */
  private double nearestKm(Place place) {
    return order.workers().stream()
        .map(Worker::home)
        .filter(Place::located)
        .mapToDouble(place::straightKm)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  Premises get(String site) {
    return sites.get(site);
  }

  /** What keeps the site out of any plan, or null. */
  Note fault(String site) {
    return sites.containsKey(site)
        ? faults.get(site)
        : new Note("no-site", "site " + site, "is not known.");
  }

  /** When the site may be visited on a day of the plan, not before the plan begins. */
  List<Span> open(String site, LocalDate day) {
    List<Span> open = new ArrayList<>();
    for (Span span : hours.get(site).on(day, sites.get(site).zone(), order.holidays())) {
      Instant from = span.from().isBefore(order.now()) ? order.now() : span.from();
      if (from.isBefore(span.to())) {
        open.add(new Span(from, span.to()));
      }
    }
    return open;
  }

  /** Minutes of the longest visit on any day of the plan; 0 when it is closed on all of them. */
  double longestMinutes(String site) {
    return order.days().stream()
        .flatMap(day -> open(site, day).stream())
        .mapToDouble(Span::minutes)
        .max()
        .orElse(0);
  }
}
