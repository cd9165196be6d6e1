package coldround.sheet;

import coldround.sheet.RecordScanner.Form;
import coldround.sheet.Sample.Entry;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How well a dialect explains the first records of a text: records of one width, cells that look
 * whole, quotes where they belong. After the idea of row and type patterns by van den Burg, Nazábal
 * and Sutton, "Wrangling messy CSV files by detecting row and type patterns", Data Mining and
 * Knowledge Discovery 33 (2019); the measure is our own.
 */
final class DialectScore {

  /** A blank or colon inside a cell is common, so as delimiters they must do better. */
  private static final Map<String, Double> PRIORS = Map.of(" ", 0.6, ":", 0.5, "~", 0.9, "^", 0.9);

  private static final double STEADY = 0.6;

  /** So many lines of a single cell weigh as much as one of several. */
  private static final int SINGLES = 3;

  private static final int CELLS_PER_RECORD = 60;

  private DialectScore() {}

  /** Between 0 and 1; 0 if the dialect finds a single column. */
  static double of(Sample sample, Dialect dialect) {
    List<Entry> records = sample.filledRecords();
    int width = commonWidth(records);
    if (width < 2 || (dialect.delimiter().equals(" ") && isRunningText(records, width))) {
      return 0;
    }
    return steadiness(records, width)
        * (1 - 0.6 / width)
        * likeness(records)
        * quoteFit(records)
        * PRIORS.getOrDefault(dialect.delimiter(), 1.0);
  }

  /** Blanks between words rather than cells: records of any width, and no quotes to hold words. */
  private static boolean isRunningText(List<Entry> records, int width) {
    long quoted = records.stream().filter(r -> r.form() == Form.QUOTED).count();
    return steadiness(records, width) < STEADY && 2 * quoted < records.size();
  }

  /**
   * The most frequent number of cells, the larger if two are as frequent. Lines of a single cell
   * count less: comments and titles stand between the rows of a table.
   */
  static int commonWidth(List<Entry> records) {
    Map<Integer, Integer> counts = new HashMap<>();
    records.forEach(r -> counts.merge(r.width(), r.width() == 1 ? 1 : SINGLES, Integer::sum));
    int best = 0;
    for (Map.Entry<Integer, Integer> count : counts.entrySet()) {
      int most = counts.getOrDefault(best, 0);
      boolean more = count.getValue() > most;
      if (more || (count.getValue() == most && count.getKey() > best)) {
        best = count.getKey();
      }
    }
    return best;
  }

  /** Share of the records of the common width; title lines of one cell on top do not count. */
  static double steadiness(List<Entry> records, int width) {
    int first = 0;
    while (first < Math.min((records.size() - 1) / 2, 10) && records.get(first).width() == 1) {
      first++;
    }
    int same = 0;
    for (Entry record : records.subList(first, records.size())) {
      same += record.width() == width ? 1 : 0;
    }
    return (double) same / (records.size() - first);
  }

  private static double likeness(List<Entry> records) {
    double sum = 0;
    long count = 0;
    for (Entry record : records) {
      int last = Math.min(record.width(), CELLS_PER_RECORD);
      for (String cell : record.cells().subList(0, last)) {
        sum += CellTypes.likeness(cell);
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  private static double quoteFit(List<Entry> records) {
    double good = 0.5;
    double all = 0.5;
    for (Entry record : records) {
      good += record.form() == Form.QUOTED ? 1 : 0;
      all += record.form() == Form.PLAIN ? 0 : 1;
    }
    return 0.3 + 0.7 * good / all;
  }
}
