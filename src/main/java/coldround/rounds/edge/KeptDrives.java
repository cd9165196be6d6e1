package coldround.rounds.edge;

import coldround.rounds.Place;
import coldround.rounds.Travel;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Drives that an outside source has told, in the store. */
@ApplicationScoped
class KeptDrives {

  private static final int PAGE = 200;

  /**
   * @param from coordinates as text
   * @param to coordinates as text
   * @param km null if the source does not tell it
   */
  record Drive(String from, String to, Double minutes, Double km) {}

  private final EntityManager entities;

  @Inject
  KeptDrives(EntityManager entities) {
    this.entities = entities;
  }

  /** Adds the drives between these places that are not older than a time. */
  @Transactional
  void into(Travel travel, List<Place> places, String source, Instant since) {
    Map<String, List<Place>> byKey = new LinkedHashMap<>();
    for (Place place : places) {
      if (place.located()) {
        byKey.computeIfAbsent(AskedDrives.key(place), key -> new ArrayList<>()).add(place);
      }
    }
    List<String> keys = List.copyOf(byKey.keySet());
    for (int at = 0; at < keys.size(); at += PAGE) {
      List<Drive> drives =
          entities
              .createQuery(
                  "select fromPlace, toPlace, minutes, km from AskedDriveRow where source = :source"
                      + " and fromPlace in :places and asked >= :since",
                  Drive.class)
              .setParameter("source", source)
              .setParameter("places", keys.subList(at, Math.min(keys.size(), at + PAGE)))
              .setParameter("since", since)
              .getResultList();
      drives.forEach(drive -> add(travel, drive, byKey));
    }
  }

  private static void add(Travel travel, Drive drive, Map<String, List<Place>> byKey) {
    for (Place from : byKey.get(drive.from)) {
      for (Place to : byKey.getOrDefault(drive.to, List.of())) {
        travel.told(from, to, drive.minutes, drive.km);
      }
    }
  }

  @Transactional
  void keep(String source, List<Drive> drives, Instant now) {
    Map<String, Drive> once = new LinkedHashMap<>();
    drives.forEach(drive -> once.put(drive.from + ">" + drive.to, drive));
    once.values().forEach(drive -> entities.merge(AskedDriveRow.of(source, drive, now)));
  }
}
