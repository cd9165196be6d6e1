package coldround.sheet;

import coldround.sheet.RecordScanner.Form;
import coldround.sheet.RowMender.Mended;
import coldround.sheet.Sample.Entry;
import java.util.List;

/** Learns what the cells of each column look like from the first records of a table. */
final class ModelLearner {

  /** Share of fitting records below which the others are mended to learn from them too. */
  private static final double ENOUGH = 0.5;

  private static final int ROUNDS = 2;
  private static final int MENDED = 200;
  private static final int WIDEST = 100;
  private static final int LONGEST = 5_000;
  private static final long MOST_STEPS = 10_000_000;

  private ModelLearner() {}

  static ColumnModel learn(Sample sample, Layout layout, Dialect dialect) {
    List<Entry> body =
        sample.filledRecords().stream().filter(r -> r.line() >= layout.firstDataLine()).toList();
    ColumnModel model = fitting(body, layout.width());
    boolean few = model.rows() > 0 && model.rows() < ENOUGH * body.size();
    for (int i = 0; few && layout.width() <= WIDEST && i < ROUNDS; i++) {
      model = mended(body, model, dialect);
    }
    return model;
  }

  private static ColumnModel fitting(List<Entry> body, int width) {
    ColumnModel model = new ColumnModel(width);
    for (Entry record : body) {
      if (record.width() == width && record.form() != Form.IRREGULAR) {
        model.learn(record.cells());
      }
    }
    return model;
  }

  private static ColumnModel mended(List<Entry> body, ColumnModel known, Dialect dialect) {
    ColumnModel model = fitting(body, known.width());
    RowMender mender = new RowMender(known, dialect);
    long steps = 0;
    for (Entry record : body.subList(0, Math.min(MENDED, body.size()))) {
      boolean misfit = record.width() != known.width() && record.text().length() <= LONGEST;
      Mended mended = misfit && steps < MOST_STEPS ? mender.mend(record.text()) : null;
      steps += misfit ? mender.steps() : 0;
      if (mended != null) {
        model.learn(mended.cells());
      }
    }
    return model;
  }
}
