package coldround.field.edge;

import coldround.field.FieldVisit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.http.Caller;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;

/** Technicians write visits of their own at units that they go to, and no others. */
@ApplicationScoped
class OwnVisits {

  private final Caller caller;

  @Inject
  OwnVisits(Caller caller) {
    this.caller = caller;
  }

  boolean there(UnitHistory history) {
    return caller.reaches(history.site().customer(), history.site().code());
  }

  /**
   * The visit with its technician named.
   *
   * @param stored what it would correct
   * @throws Problem 422 where it is said to be another's, 403 where another's would be corrected
   */
  FieldVisit own(FieldVisit visit, Optional<Visit> stored) {
    String technician = caller.technician();
    if (technician.isEmpty()) {
      return visit;
    }
    if (stored.isPresent() && !stored.get().technician().equals(technician)) {
      throw new Problem(
          403,
          "not-allowed",
          "Not allowed",
          "Visit '" + visit.number() + "' of this unit is not yours; a planner may correct it.",
          List.of());
    }
    String said = visit.technician() == null ? "" : visit.technician().strip();
    if (!said.isEmpty() && !said.equals(technician)) {
      String message = "is your own code, " + technician + ", or left out";
      throw new Problem(
          422,
          "wrong-visit",
          "The visit cannot be taken as it is",
          "/technician: " + message,
          List.of(new Problem.FieldError("/technician", said, message)));
    }
    return visit.by(technician);
  }
}
