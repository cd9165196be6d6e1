package coldround.fleet.edge;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

@ApplicationScoped
class CustomerWriter implements KindWriter, PanacheRepository<CustomerRow> {

  private final Known known;

  @Inject
  CustomerWriter(Known known) {
    this.known = known;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.CUSTOMERS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    Map<String, CustomerRow> rows = known.customers(batch);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      CustomerRow row = rows.get(entry.key("customer"));
      outcomes.add(
          KindWriter.put(
              row == null ? null : row.read(),
              entry,
              Merging::customer,
              customer -> {
                CustomerRow target =
                    rows.computeIfAbsent(customer.code(), code -> new CustomerRow());
                target.write(customer);
                persist(target);
              },
              (old, now) -> {
                notes.changed(Kind.CUSTOMERS, null, now.code(), Cells.of(old), Cells.of(now));
                if (!old.name().equals(now.name())) {
                  // the fleet list finds them by it
                  unitsOf(now.code()).forEach(notes::touched);
                }
              }));
    }
    return outcomes;
  }

  private List<Long> unitsOf(String customer) {
    return getEntityManager()
        .createQuery("select u.id from UnitRow u where u.site.customer.code = :code", Long.class)
        .setParameter("code", customer)
        .getResultList();
  }
}
