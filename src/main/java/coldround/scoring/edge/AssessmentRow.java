package coldround.scoring.edge;

import coldround.store.Column;
import coldround.store.OfUnits;
import coldround.store.PlainTable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;

@Entity
@Table(name = "assessment")
class AssessmentRow {
  static final OfUnits SCORES = new OfUnits("assessment", "score");
  static final PlainTable<AssessmentRow> TABLE =
      new PlainTable<>(
          "assessment",
          1,
          List.of(
              Column.id("unit_id", row -> row.unitId),
              Column.day("as_of", row -> row.asOf),
              Column.number("score", row -> row.score),
              Column.number("low", row -> row.low),
              Column.number("high", row -> row.high),
              Column.number("completeness", row -> row.completeness),
              Column.text("factors", row -> row.factors),
              Column.day("next_due", row -> row.nextDue),
              Column.text("next_task", row -> row.nextTask),
              Column.text("words", row -> row.words)));

  @Id Long unitId;
  LocalDate asOf;
  double score;
  double low;
  double high;
  double completeness;
  String factors;
  LocalDate nextDue;
  String nextTask;

  /** Of the unit and its site, in small letters, to be searched. */
  String words;
}
