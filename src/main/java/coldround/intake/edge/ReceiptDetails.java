package coldround.intake.edge;

import coldround.intake.ProblemGroup;
import coldround.intake.Receipt;
import coldround.intake.Vanished;
import java.util.List;
import java.util.Map;

/** What of a receipt is only ever read and written as a whole. */
record ReceiptDetails(
    List<ProblemGroup> problemGroups, List<Map<String, String>> firstRows, Vanished vanished) {

  ReceiptDetails {
    problemGroups = problemGroups == null ? List.of() : problemGroups;
    firstRows = firstRows == null ? List.of() : firstRows;
    vanished = vanished == null ? Vanished.NONE : vanished;
  }

  static ReceiptDetails of(Receipt receipt) {
    return new ReceiptDetails(receipt.problemGroups(), receipt.firstRows(), receipt.vanished());
  }
}
