package coldround.intake.edge;

import coldround.access.Audit;
import coldround.access.Audit.Change;
import coldround.intake.IntakeTables;
import coldround.intake.Profile;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Profiles by name: those of the files first, then those that were saved. */
@ApplicationScoped
class StoredProfiles {

  private final EntityManager entities;
  private final IntakeTables tables;
  private final ObjectMapper json;
  private final Audit audit;
  private final Clock clock;

  @Inject
  StoredProfiles(
      EntityManager entities, IntakeTables tables, ObjectMapper json, Audit audit, Clock clock) {
    this.entities = entities;
    this.tables = tables;
    this.json = json;
    this.audit = audit;
    this.clock = clock;
  }

  @Transactional
  Optional<Profile> find(String name) {
    Optional<Profile> packaged = tables.profile(name);
    return packaged.isPresent()
        ? packaged
        : Optional.ofNullable(entities.find(ProfileRow.class, name)).map(this::read);
  }

  private Profile read(ProfileRow row) {
    try {
      return json.readValue(row.document, ProfileDocument.class).profile();
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Transactional
  Set<String> names() {
    Set<String> names = new TreeSet<>(tables.profileNames());
    names.addAll(entities.createQuery("select name from ProfileRow", String.class).getResultList());
    return names;
  }

  /**
   * @return true for a new one, false for one that took the place of another
   */
  @Transactional
  boolean save(Profile profile) {
    ProfileRow row = entities.find(ProfileRow.class, profile.name());
    boolean created = row == null;
    String before = created ? "" : row.document;
    ProfileRow target = created ? new ProfileRow() : row;
    target.name = profile.name();
    target.saved = clock.instant();
    try {
      target.document = json.writeValueAsString(ProfileDocument.of(profile));
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
    if (created) {
      entities.persist(target);
    }
    String action = created ? "made" : "changed";
    audit.note(Change.of("profile", profile.name(), action, before, target.document));
    return created;
  }
}
