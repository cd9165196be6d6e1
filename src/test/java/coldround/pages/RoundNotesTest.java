package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.FleetNames;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.TravelTime;
import coldround.fleet.UnitHistory;
import coldround.rounds.Bill;
import coldround.rounds.Call;
import coldround.rounds.Job;
import coldround.rounds.Note;
import coldround.rounds.RoundPlan;
import coldround.rounds.Why;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What programs are told by codes is told to people by names. */
class RoundNotesTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 4);

  /** Of the list that names are taken from, nothing else. */
  private static final Fleet FLEET =
      new Fleet() {
        @Override
        public Optional<UnitHistory> history(String unitId) {
          throw new UnsupportedOperationException();
        }

        @Override
        public <T> void each(FleetFilter f, Function<UnitHistory, T> work, Consumer<T> take) {
          throw new UnsupportedOperationException();
        }

        @Override
        public <T> void each(
            Collection<String> ids, Function<UnitHistory, T> work, Consumer<T> take) {
          throw new UnsupportedOperationException();
        }

        @Override
        public List<Customer> customers() {
          return List.of(
              new Customer("LMC", "Lindgren Markets", "", ""),
              new Customer("A/B", "Alder & Birch", "", ""),
              new Customer("NONAME", "", "", ""));
        }

        @Override
        public List<Site> sites(String customer) {
          return switch (customer) {
            case "LMC" -> List.of(site("LMC", "S4", "Elm Street"), site("LMC", "S5", ""));
            case "A/B" -> List.of(site("A/B", "C/D", "Mill Lane"));
            case "NONAME" -> List.of(site("NONAME", "1", "Quay"));
            default -> List.of();
          };
        }

        @Override
        public List<Technician> technicians() {
          return List.of(
              new Technician("T1", "Rosa Vega", null, null, "", List.of(), List.of()),
              new Technician("T2", "", null, null, "", List.of(), List.of()));
        }

        @Override
        public List<TravelTime> travelTimes() {
          return List.of();
        }
      };

  private static Site site(String customer, String code, String name) {
    return new Site(customer, code, name, "", null, null, null, null, "", "", "", null);
  }

  private static RoundPlan plan() {
    Job job =
        new Job(
            "t-17",
            "LMC/S4",
            "u1",
            "RTU-1",
            "condenser-coil-cleaning",
            600,
            Set.of(),
            DAY,
            DAY,
            DAY,
            null,
            0,
            List.of());
    Call call = new Call("c1", "LMC/S4", List.of(job), DAY, null, false, null);
    Why why = new Why("too-long", true, null, "it takes too long", "it takes too long", "");
    List<RoundPlan.Missed> missed = List.of(new RoundPlan.Missed(call, why));
    return new RoundPlan(DAY, DAY, List.of(), missed, List.of(), new Bill(0, 0, 0, 0), "USD");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "site LMC/S4 | Elm Street, Lindgren Markets (LMC/S4)",
        "site LMC/S4 on 2026-05-04 | Elm Street, Lindgren Markets (LMC/S4) on Mon 4 May",
        "site LMC/S5 | S5, Lindgren Markets (LMC/S5)",
        "site A/B/C/D | Mill Lane, Alder & Birch (A/B/C/D)",
        "site NONAME/1 | Quay, NONAME (NONAME/1)",
        "site GONE/S1 | GONE/S1",
        "call c17 at LMC/S4 | Elm Street, Lindgren Markets (LMC/S4)",
        "technician T1 | Rosa Vega (T1)",
        "technician T1 on 2026-05-04 | Rosa Vega (T1) on Mon 4 May",
        "technician T2 | T2",
        "technician T9 | T9",
        "task t-17 | Condenser coil cleaning of RTU-1 at Elm Street, Lindgren Markets",
        "task t-18 | Task t-18",
        "technicians | Technicians",
        "plan | Plan",
        "travel | Travel"
      })
  void aNoteIsAboutWhatPeopleKnow(String subject, String told) {
    RoundNotes notes = new RoundNotes(plan(), new FleetNames(FLEET));
    Note note = notes.told(new Note("code", subject, "is so."));
    assertEquals(told, note.subject());
    assertEquals("is so.", note.message());
  }
}
