package coldround.sheet;

import coldround.sheet.Dialect.Escape;
import coldround.sheet.RecordScanner.Form;
import coldround.sheet.Sample.Entry;
import java.util.ArrayList;
import java.util.List;

/** Finds delimiter, quote and escape of a text from its first records. */
final class DialectDetector {

  private static final List<String> DELIMITERS =
      List.of(",", ";", "\t", "|", "^", "~", ":", " ", "\u001f", "\u0001");

  /** Delimiters that are also written twice, because once is common inside cells. */
  private static final String DOUBLED = "|:;~^,";

  private static final int RECORDS = 500;

  /** Share of the delimiters a blank must follow to be part of them. */
  private static final double PADDED = 0.98;

  private final String text;
  private final boolean whole;

  DialectDetector(String text, boolean whole) {
    this.text = text;
    this.whole = whole;
  }

  /** The dialect that explains the text best; the standard one if the text is a single column. */
  Dialect detect(Dialect base) {
    String hint = hintedDelimiter(text);
    if (hint != null) {
      return refined(base.delimitedBy(hint));
    }
    Dialect best = base;
    double most = 0;
    for (Dialect candidate : candidates(base)) {
      double score = DialectScore.of(sample(candidate), candidate);
      if (score > most) {
        most = score;
        best = candidate;
      }
    }
    return refined(best);
  }

  /** The delimiter named by a first line {@code sep=;}, which spreadsheet programs write. */
  static String hintedDelimiter(String text) {
    boolean hint = text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 5;
    boolean alone = hint && (text.charAt(5) == '\n' || text.charAt(5) == '\r');
    return alone ? text.substring(4, 5) : null;
  }

  private Sample sample(Dialect dialect) {
    return Sample.read(text, whole, dialect, RECORDS);
  }

  private List<Dialect> candidates(Dialect base) {
    List<Dialect> candidates = new ArrayList<>();
    for (String delimiter : DELIMITERS) {
      if (text.contains(delimiter)) {
        Dialect candidate = base.delimitedBy(delimiter);
        Dialect quoted = candidate.quotedBy(quote(delimiter), Escape.DOUBLED);
        candidates.add(quoted);
        if (!delimiter.isBlank() && text.contains(delimiter + " ")) {
          candidates.add(quoted.padded(true));
        }
      }
    }
    return candidates;
  }

  private char quote(String delimiter) {
    QuoteEvidence apostrophe = QuoteEvidence.of(text, delimiter, '\'');
    if (!apostrophe.isConvincing()) {
      return '"';
    }
    int usual = QuoteEvidence.of(text, delimiter, '"').wrapped();
    return apostrophe.wrapped() > 3 * usual ? '\'' : '"';
  }

  private Dialect refined(Dialect dialect) {
    return padding(escape(doubling(dialect)));
  }

  /** Every second cell empty means that the delimiter is written twice. */
  private Dialect doubling(Dialect dialect) {
    String twice = dialect.delimiter() + dialect.delimiter();
    if (!DOUBLED.contains(dialect.delimiter()) || !text.contains(twice)) {
      return dialect;
    }
    for (Entry record : sample(dialect).filledRecords()) {
      for (int i = 1; i < record.width(); i += 2) {
        if (!record.cells().get(i).isEmpty()) {
          return dialect;
        }
      }
    }
    return dialect.delimitedBy(twice);
  }

  private Dialect escape(Dialect dialect) {
    boolean possible =
        text.contains("\\" + dialect.quote()) || text.contains("\\" + dialect.delimiter());
    if (!possible) {
      return dialect;
    }
    Dialect backslash = dialect.quotedBy(dialect.quote(), Escape.BACKSLASH);
    return fitting(backslash) > fitting(dialect) ? backslash : dialect;
  }

  /** Records of the common width with every quote in place. */
  private long fitting(Dialect dialect) {
    List<Entry> records = sample(dialect).filledRecords();
    int width = DialectScore.commonWidth(records);
    return records.stream().filter(r -> r.width() == width && r.form() != Form.IRREGULAR).count();
  }

  /** Blanks belong to the delimiter if quotes need it or if nearly every delimiter has one. */
  private Dialect padding(Dialect dialect) {
    if (dialect.delimiter().isBlank() || !text.contains(dialect.delimiter() + " ")) {
      return dialect;
    }
    long plain = fitting(dialect.padded(false));
    long padded = fitting(dialect.padded(true));
    boolean needed = padded > plain || (padded == plain && blanksAhead(dialect) >= PADDED);
    return dialect.padded(needed);
  }

  /** Share of the cells behind a delimiter that begin with a blank or are empty. */
  private double blanksAhead(Dialect dialect) {
    double blank = 0;
    double all = 0;
    List<Entry> records =
        sample(dialect.padded(true).delimitedBy(dialect.delimiter() + " ")).filledRecords();
    List<Entry> plain = sample(dialect.padded(true)).filledRecords();
    for (Entry record : records) {
      blank += record.width() - 1;
    }
    for (Entry record : plain) {
      all += record.width() - 1;
    }
    return all == 0 ? 0 : blank / all;
  }
}
