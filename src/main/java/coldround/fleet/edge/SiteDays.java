package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.Today;
import coldround.fleet.edge.Known.SiteKey;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A moment that was written with its distance from UTC is a day of the site: that which it had in
 * the time zone there, or in that of the contractor where the site says none.
 */
@ApplicationScoped
class SiteDays {

  private final Known known;
  private final Today today;

  @Inject
  SiteDays(Known known, Today today) {
    this.known = known;
    this.today = today;
  }

  List<Entry> of(List<Entry> batch) {
    List<Entry> moments = batch.parallelStream().filter(SiteDays::hasMoment).toList();
    if (moments.isEmpty()) {
      return batch;
    }
    Map<SiteKey, SiteRow> sites = known.sites(moments);
    return batch.stream()
        .map(entry -> hasMoment(entry) ? in(zone(sites.get(SiteKey.of(entry))), entry) : entry)
        .toList();
  }

  private static boolean hasMoment(Entry entry) {
    for (Object value : entry.said().values()) {
      if (value instanceof OffsetDateTime) {
        return true;
      }
    }
    return false;
  }

  private ZoneId zone(SiteRow site) {
    return site == null || site.timeZone.isEmpty() ? today.usual() : ZoneId.of(site.timeZone);
  }

  private static Entry in(ZoneId zone, Entry entry) {
    Map<String, Object> said = new LinkedHashMap<>(entry.said());
    said.replaceAll(
        (column, value) ->
            value instanceof OffsetDateTime moment
                ? moment.atZoneSameInstant(zone).toLocalDate()
                : value);
    return new Entry(entry.line(), said);
  }
}
