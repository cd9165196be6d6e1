package coldround.field;

import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.intake.CellRules;
import coldround.intake.Heading;
import coldround.intake.HeadingReader;
import coldround.intake.IntakeTables;
import coldround.intake.RowProblem;
import coldround.intake.RowReading;
import coldround.intake.RowReading.Understood;
import coldround.sheet.FormulaGuard;
import coldround.sheet.Row;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Fills readings into the long form of lists and reads them from there. */
final class ReadingForm {

  /** Columns of the long form with the field that each is filled from. */
  private static final Map<String, String> FIELDS =
      Map.of(
          "quantity", "quantity",
          "part", "part",
          "value", "value",
          "measure", "unit",
          "not_taken", "notTaken");

  private static final List<String> LABELS =
      List.of(
          "customer", "site", "unit", "visit", "quantity", "part", "value", "measure", "not_taken");

  // whose reading it is was checked with the visit
  private static final String GIVEN = "given";

  private final RowReading reading;

  ReadingForm(IntakeTables tables, CellRules rules) {
    Heading heading =
        HeadingReader.read(Kind.READINGS, LABELS, 0, tables.columns(Kind.READINGS), rules);
    this.reading = new RowReading(Kind.READINGS, heading, rules);
  }

  /** Empty when it was refused; why is added to the problems. */
  Optional<Reading> read(FieldReading sent, List<FieldReading> all, List<FieldProblem> problems) {
    Optional<FieldProblem> odd = valueOrReason(sent).or(() -> twin(sent, all));
    if (odd.isPresent()) {
      problems.add(odd.get());
      return Optional.empty();
    }
    List<String> cells =
        Stream.of(
                GIVEN,
                GIVEN,
                GIVEN,
                GIVEN,
                sent.quantity(),
                sent.part(),
                sent.value(),
                sent.measure(),
                sent.notTaken())
            .map(FormulaGuard::guard)
            .toList();
    Understood understood = reading.read(new Row(0, cells));
    understood.problems().stream()
        .filter(RowProblem::rejects)
        .forEach(problem -> problems.add(problem(sent, problem)));
    return understood.entry() == null
        ? Optional.empty()
        : Optional.ofNullable((Reading) understood.entry().said().get("value"));
  }

  private static Optional<FieldProblem> valueOrReason(FieldReading sent) {
    if (sent.value().isEmpty() != sent.notTaken().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new FieldProblem(
            sent.path() + "/value",
            sent.value(),
            "a reading has either a value with its unit, or notTaken with the reason why there is"
                + " none."));
  }

  private static Optional<FieldProblem> twin(FieldReading sent, List<FieldReading> all) {
    FieldReading first = all.stream().filter(sent::sameAs).findFirst().orElse(sent);
    return first == sent
        ? Optional.empty()
        : Optional.of(
            new FieldProblem(
                sent.path(),
                sent.quantity(),
                "is told already at %s. Leave one out, or name the parts."
                    .formatted(first.path())));
  }

  private static FieldProblem problem(FieldReading sent, RowProblem problem) {
    String field = FIELDS.getOrDefault(problem.column(), problem.column());
    return new FieldProblem(sent.path() + "/" + field, problem.value(), problem.message());
  }
}
