package coldround.replacement.edge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Plans as they were made. */
@ApplicationScoped
class StoredPlans {

  /**
   * One plan in its three shapes.
   *
   * @param answer JSON
   * @param sheet CSV
   * @param report HTML
   */
  record Stored(byte[] answer, byte[] sheet, byte[] report) {}

  private final EntityManager entities;

  @Inject
  StoredPlans(EntityManager entities) {
    this.entities = entities;
  }

  @Transactional
  void add(String id, Instant made, Stored plan) {
    PlanRow row = new PlanRow();
    row.id = id;
    row.made = made;
    row.answer = packed(plan.answer);
    row.sheet = packed(plan.sheet);
    row.report = packed(plan.report);
    entities.persist(row);
  }

  @Transactional
  Optional<Stored> find(String id) {
    return Optional.ofNullable(entities.find(PlanRow.class, id))
        .map(row -> new Stored(unpacked(row.answer), unpacked(row.sheet), unpacked(row.report)));
  }

  private static byte[] packed(byte[] plain) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(plain);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] unpacked(byte[] packed) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(packed))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
