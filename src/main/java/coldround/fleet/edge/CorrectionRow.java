package coldround.fleet.edge;

import coldround.fleet.Correction;
import coldround.fleet.Kind;
import coldround.fleet.UnitIds;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.Id;
import jakarta.persistence.SequenceGenerator;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "correction")
class CorrectionRow {
  @Id
  @GeneratedValue(generator = "correction_seq")
  @SequenceGenerator(name = "correction_seq", sequenceName = "correction_seq")
  Long id;

  Instant changed;
  String origin;
  String kind;
  Long unitId;
  String item;
  String columnName;
  String former;
  String later;

  static CorrectionRow of(
      Kind kind, Long unit, String item, String column, String former, String later) {
    CorrectionRow row = new CorrectionRow();
    row.kind = kind.code();
    row.unitId = unit;
    row.item = item;
    row.columnName = column;
    row.former = former;
    row.later = later;
    return row;
  }

  Correction read() {
    return new Correction(
        id,
        changed,
        origin,
        Kind.find(kind).orElseThrow(),
        unitId == null ? "" : UnitIds.text(unitId),
        item,
        columnName,
        former,
        later);
  }
}
