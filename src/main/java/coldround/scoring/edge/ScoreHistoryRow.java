package coldround.scoring.edge;

import coldround.store.Column;
import coldround.store.PlainTable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;

@Entity
@Table(name = "score_history")
@IdClass(ScoreHistoryRow.Key.class)
class ScoreHistoryRow {

  record Key(Long unitId, LocalDate changed) implements Serializable {}

  static final PlainTable<ScoreHistoryRow> TABLE =
      new PlainTable<>(
          "score_history",
          2,
          List.of(
              Column.id("unit_id", row -> row.unitId),
              Column.day("changed", row -> row.changed),
              Column.number("score", row -> row.score),
              Column.number("low", row -> row.low),
              Column.number("high", row -> row.high),
              Column.number("completeness", row -> row.completeness),
              Column.text("factors", row -> row.factors)));

  @Id Long unitId;
  @Id LocalDate changed;
  double score;
  double low;
  double high;
  double completeness;
  String factors;
}
