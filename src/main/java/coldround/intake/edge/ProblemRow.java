package coldround.intake.edge;

import coldround.intake.ProblemCode;
import coldround.intake.RowProblem;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;

@Entity
@Table(name = "import_problem")
@IdClass(ProblemRow.Key.class)
class ProblemRow {

  record Key(String importId, int position) implements Serializable {}

  private static final int LONGEST = 8000;

  @Id String importId;
  @Id int position;

  long line;
  String columnName;
  String cell;
  String code;
  String message;

  static ProblemRow of(String importId, int position, RowProblem problem) {
    ProblemRow row = new ProblemRow();
    row.importId = importId;
    row.position = position;
    row.line = problem.row();
    row.columnName = problem.column();
    row.cell = problem.value();
    row.code = problem.code().name();
    String message = problem.message();
    row.message = message.length() > LONGEST ? message.substring(0, LONGEST) : message;
    return row;
  }

  RowProblem read() {
    return new RowProblem(line, columnName, cell, ProblemCode.valueOf(code), message);
  }
}
