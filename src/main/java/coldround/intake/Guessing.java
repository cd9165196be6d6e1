package coldround.intake;

import coldround.fleet.Kind;
import coldround.intake.Proposal.Candidate;
import coldround.intake.Proposal.Guess;
import coldround.quantity.Measure;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Proposes which column of the standard form each header of a file means: by how alike the names
 * are, in any known profile, and by how many of its cells the column would take.
 */
final class Guessing {

  private static final Pattern WITH_MEASURE =
      Pattern.compile("(?s)(.*\\S)\\s*[\\[(]\\s*([^\\])\\[(]*?)\\s*[\\])]");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[-+]?\\d+,\\d+");
  private static final Pattern DECIMAL_POINT = Pattern.compile("[-+]?\\d+\\.\\d+");
  private static final Set<ColumnType> TELLING =
      Set.of(
          ColumnType.DATE,
          ColumnType.CHOICE,
          ColumnType.GRADE,
          ColumnType.ZONE,
          ColumnType.REFRIGERANT);
  private static final int MOST_CANDIDATES = 3;

  /** A header that may mean a column. */
  private record Match(int header, Column column, double confidence) {}

  private final Kind kind;
  private final List<String> headers;
  private final List<List<String>> sample;
  private final List<Column> columns;
  private final Vocabulary vocabulary;
  private final GuessLimits limits;
  private final CellRules rules;

  /**
   * @param sample rows of cells under the headers
   */
  Guessing(
      Kind kind,
      List<String> headers,
      List<List<String>> sample,
      IntakeTables tables,
      GuessLimits limits,
      LocalDate today) {
    this.kind = kind;
    this.headers = headers.stream().map(Cell::content).toList();
    this.sample = sample;
    this.columns = tables.columns(kind);
    this.vocabulary = new Vocabulary(tables.profiles());
    this.limits = limits;
    this.rules = tables.rules(profile(Map.of(), List.of()), today);
  }

  Proposal propose() {
    List<Profile.Derived> derived = derived();
    Set<String> taken = new HashSet<>();
    derived.forEach(one -> taken.addAll(one.columns()));
    List<Match> matches = matches(derived, taken);
    Map<Integer, Match> chosen = chosen(matches);
    List<Guess> guesses = new ArrayList<>();
    for (int i = 0; i < headers.size(); i++) {
      if (!headers.get(i).isEmpty() && !isSource(i, derived)) {
        guesses.add(guess(i, chosen.get(i), matches));
      }
    }
    chosen.values().forEach(match -> taken.add(match.column().name()));
    List<String> missing =
        columns.stream()
            .filter(column -> column.mustBeFilled() && !taken.contains(column.name()))
            .map(Column::name)
            .toList();
    return new Proposal(profile(chosen, derived), guesses, missing);
  }

  private boolean isSource(int header, List<Profile.Derived> derived) {
    String plain = Profile.plain(headers.get(header));
    return derived.stream().anyMatch(one -> one.headers().contains(plain));
  }

  /** "Site / Unit": those of the profiles, and headers whose parts are names of columns. */
  private List<Profile.Derived> derived() {
    List<Profile.Derived> found = new ArrayList<>(vocabulary.derived(kind, headers));
    for (String header : headers) {
      String[] parts = header.split("/");
      boolean known = found.stream().anyMatch(o -> o.headers().contains(Profile.plain(header)));
      if (parts.length == 2 && !known) {
        Optional<Column> first = exactly(parts[0]);
        Optional<Column> second = exactly(parts[1]);
        if (first.isPresent() && second.isPresent() && !first.equals(second)) {
          List<String> both = List.of(first.get().name(), second.get().name());
          found.add(new Profile.Derived(List.of(header), "/", both));
        }
      }
    }
    return found;
  }

  private Optional<Column> exactly(String name) {
    return columns.stream()
        .filter(column -> vocabulary.likeness(kind, column, name.strip()) == 1)
        .findFirst();
  }

  private List<Match> matches(List<Profile.Derived> derived, Set<String> taken) {
    List<Match> matches = new ArrayList<>();
    for (int i = 0; i < headers.size(); i++) {
      String header = headers.get(i);
      if (!header.isEmpty() && !RejectedRows.isOwn(header) && !isSource(i, derived)) {
        for (Column column : columns) {
          double confidence = taken.contains(column.name()) ? 0 : confidence(i, column);
          if (confidence >= limits.worthAsking()) {
            matches.add(new Match(i, column, confidence));
          }
        }
      }
    }
    matches.sort(Comparator.comparingDouble(Match::confidence).reversed());
    return matches;
  }

  private double confidence(int header, Column column) {
    double alike =
        Math.max(
            vocabulary.likeness(kind, column, name(headers.get(header), column)),
            vocabulary.likeness(kind, column, headers.get(header)));
    // most pairs have nothing in common, and their cells need not be read
    if (alike < limits.worthAsking() / 2) {
      return 0;
    }
    double fitting = fitting(header, column);
    if (alike == 1) {
      return 0.5 + 0.5 * fitting;
    }
    if (TELLING.contains(column.type())) {
      return (alike + fitting) / 2;
    }
    return alike * (isText(column) ? limits.textShare() : 0.5 + 0.5 * fitting);
  }

  /** Cells of such a column tell nothing: any text would do. */
  private static boolean isText(Column column) {
    return column.type() == ColumnType.TEXT || column.type() == ColumnType.CODE;
  }

  /** Share of the filled cells of the sample that the column would take; 1 where none is filled. */
  private double fitting(int header, Column column) {
    CellReader reader = CellReaders.reader(column, column.measure(), rules);
    int filled = 0;
    int good = 0;
    for (List<String> row : sample) {
      String cell = header < row.size() ? Cell.content(row.get(header)) : "";
      if (!cell.isEmpty() && !cell.equals("-")) {
        filled++;
        good += fits(reader, cell) ? 1 : 0;
      }
    }
    return filled == 0 ? 1 : (double) good / filled;
  }

  /** A date that can be two days is a date; a word that is no refrigerant is none. */
  private static boolean fits(CellReader reader, String cell) {
    Set<ProblemCode> told = EnumSet.noneOf(ProblemCode.class);
    Object value = reader.read(cell, (code, message) -> told.add(code));
    return told.contains(ProblemCode.AMBIGUOUS_DATE)
        || (value != null && !told.contains(ProblemCode.UNKNOWN_REFRIGERANT));
  }

  /** The best match first; each header and each column once. */
  private static Map<Integer, Match> chosen(List<Match> matches) {
    Map<Integer, Match> chosen = new HashMap<>();
    Set<Column> taken = new HashSet<>();
    for (Match match : matches) {
      if (!chosen.containsKey(match.header()) && taken.add(match.column())) {
        chosen.put(match.header(), match);
      }
    }
    return chosen;
  }

  private Guess guess(int header, Match match, List<Match> matches) {
    List<Candidate> candidates =
        matches.stream()
            .filter(one -> one.header() == header)
            .limit(MOST_CANDIDATES)
            .map(one -> new Candidate(one.column().name(), rounded(one.confidence())))
            .toList();
    if (match == null) {
      // its columns went to better headers, or there was none: nothing to ask
      return new Guess(headers.get(header), null, "", 0, true, candidates);
    }
    boolean leads =
        match.confidence() == 1
            || matches.stream()
                .filter(one -> one.header() == header && one != match)
                .allMatch(one -> match.confidence() - one.confidence() >= limits.leastLead());
    return new Guess(
        headers.get(header),
        match.column().name(),
        measure(match),
        rounded(match.confidence()),
        leads && match.confidence() >= limits.leastConfidence(),
        candidates);
  }

  private static double rounded(double confidence) {
    return Math.round(confidence * 100) / 100.0;
  }

  private String measure(Match match) {
    if (!match.column().type().hasMeasure()) {
      return "";
    }
    Measure named = known(match);
    return (named == null ? match.column().measure() : named).code();
  }

  /** Null where neither the header nor a profile says. */
  private Measure known(Match match) {
    String header = headers.get(match.header());
    Matcher form = WITH_MEASURE.matcher(header);
    Optional<Measure> bracket =
        form.matches()
            ? rules.measure(form.group(2)).filter(match.column()::accepts)
            : Optional.empty();
    return bracket.orElseGet(() -> vocabulary.measure(kind, match.column().name(), header));
  }

  /** The header without a unit of measure in brackets; "(g)" is no gram behind a pressure. */
  private String name(String header, Column column) {
    Matcher form = WITH_MEASURE.matcher(header);
    boolean fits =
        form.matches() && rules.measure(form.group(2)).filter(column::accepts).isPresent();
    return fits ? form.group(1) : header;
  }

  private Profile profile(Map<Integer, Match> chosen, List<Profile.Derived> derived) {
    List<Profile.Alias> aliases = new ArrayList<>();
    chosen.forEach(
        (header, match) ->
            aliases.add(
                new Profile.Alias(
                    match.column().name(),
                    List.of(name(headers.get(header), match.column())),
                    List.of(),
                    match.column().type().hasMeasure() ? known(match) : null)));
    return new Profile(
        "auto",
        "proposed from a file",
        DateOrder.FROM_COLUMN,
        decimalSign(),
        vocabulary.measureNames(),
        Map.of(kind, aliases),
        vocabulary.words(),
        Map.of(kind, derived),
        vocabulary.notTaken());
  }

  /** A comma where numbers have commas and none has a point. */
  private char decimalSign() {
    boolean comma = false;
    for (List<String> row : sample) {
      for (String cell : row) {
        if (DECIMAL_POINT.matcher(cell.strip()).matches()) {
          return '.';
        }
        comma |= DECIMAL_COMMA.matcher(cell.strip()).matches();
      }
    }
    return comma ? ',' : '.';
  }
}
