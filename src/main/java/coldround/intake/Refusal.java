package coldround.intake;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;

/** Why the store did not take an entry, told for the sender of its row. */
final class Refusal {

  private Refusal() {}

  static RowProblem of(Outcome outcome, Entry entry, Heading heading) {
    return switch (outcome) {
      case UNKNOWN_CUSTOMER -> unknown("customer", customer(entry), "customers", entry, heading);
      case UNKNOWN_SITE -> unknown("site", site(entry), "sites", entry, heading);
      case UNKNOWN_UNIT -> unknown("unit", unit(entry), "units", entry, heading);
      case UNKNOWN_VISIT -> unknown("visit", visit(entry), "visits", entry, heading);
      case TAG_TAKEN ->
          problem(
              "unit",
              ProblemCode.TAG_TAKEN,
              "there is already a %s, so '%s' cannot be renamed to it. Mend one of the tags."
                  .formatted(unit(entry), said(entry, "previous_tag")),
              entry,
              heading);
      case CREATED, CHANGED, UNCHANGED ->
          throw new IllegalArgumentException(outcome + " is no refusal");
    };
  }

  private static RowProblem unknown(
      String column, String what, String first, Entry entry, Heading heading) {
    String message =
        "there is no %s. Import %s first, or mend what names it in this row."
            .formatted(what, first);
    return problem(column, ProblemCode.UNKNOWN_REFERENCE, message, entry, heading);
  }

  private static RowProblem problem(
      String column, ProblemCode code, String message, Entry entry, Heading heading) {
    return new RowProblem(entry.line(), heading.label(column), said(entry, column), code, message);
  }

  private static String customer(Entry entry) {
    return "customer '" + said(entry, "customer") + "'";
  }

  private static String site(Entry entry) {
    return "site '" + said(entry, "site") + "' of " + customer(entry);
  }

  private static String unit(Entry entry) {
    return "unit '" + said(entry, "unit") + "' at " + site(entry);
  }

  private static String visit(Entry entry) {
    return "visit '" + said(entry, "visit") + "' of " + unit(entry);
  }

  private static String said(Entry entry, String column) {
    return entry.said().get(column) instanceof String text ? RowProblem.shown(text) : "";
  }
}
