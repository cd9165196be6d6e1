package coldround.replacement.edge;

import coldround.access.Audit;
import coldround.access.Audit.Change;
import coldround.replacement.PlanOwners;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Plans as they were made. */
@ApplicationScoped
class StoredPlans implements PlanOwners {

  /**
   * One plan in its three shapes.
   *
   * @param answer JSON
   * @param sheet CSV
   * @param report HTML
   */
  record Stored(byte[] answer, byte[] sheet, byte[] report) {}

  private final EntityManager entities;
  private final Audit audit;

  @Inject
  StoredPlans(EntityManager entities, Audit audit) {
    this.entities = entities;
    this.audit = audit;
  }

  /**
   * @param customer the one that it is for; empty where it is for several
   */
  @Transactional
  void add(String id, Instant made, String customer, Stored plan) {
    PlanRow row = new PlanRow();
    row.id = id;
    row.made = made;
    row.customer = customer;
    row.answer = packed(plan.answer);
    row.sheet = packed(plan.sheet);
    row.report = packed(plan.report);
    entities.persist(row);
    String whose = customer.isEmpty() ? "for several customers" : "for " + customer;
    audit.note(new Change("replacement-plan", id, "made", customer, "", whose));
  }

  @Transactional
  Optional<Stored> find(String id) {
    return Optional.ofNullable(entities.find(PlanRow.class, id))
        .map(row -> new Stored(unpacked(row.answer), unpacked(row.sheet), unpacked(row.report)));
  }

  @Override
  @Transactional
  public boolean isFor(String planId, String customer) {
    return entities
            .createQuery(
                "select count(*) from PlanRow where id = :id and customer = :customer", Long.class)
            .setParameter("id", planId)
            .setParameter("customer", customer)
            .getSingleResult()
        > 0;
  }

  @Override
  @Transactional
  public List<Made> of(String customer, int limit) {
    return entities
        .createQuery(
            "select id, made from PlanRow where customer = :customer order by made desc, id",
            Object[].class)
        .setParameter("customer", customer)
        .setMaxResults(limit)
        .getResultStream()
        .map(row -> new Made((String) row[0], (Instant) row[1]))
        .toList();
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
