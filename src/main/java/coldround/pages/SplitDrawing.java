package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Draws the condensing split over time, in the reader's unit, into a field of a given size. */
public final class SplitDrawing {

  // room around the field: for the marks at the left and below, and for the cleanings on top
  private static final double LEFT = 40;
  private static final double RIGHT = 12;
  private static final double TOP = 30;
  private static final double BOTTOM = 30;
  private static final int UPRIGHT_MARKS = 6;
  private static final double ROOM_FOR_A_MONTH = 56;
  private static final int LOOK_AHEAD_DAYS = 365;
  private static final int BAND_STEPS = 8;
  private static final double ABOVE = -6;
  private static final double BELOW = 16;

  private final SplitSeries series;
  private final MeasureSystem system;
  private final Measure measure;
  private final int width;
  private final int height;
  private final LocalDate from;
  private final LocalDate to;
  private final List<Double> marks;

  private SplitDrawing(SplitSeries series, MeasureSystem system, int width, int height) {
    this.series = series;
    this.system = system;
    this.measure = system.measureFor(Measure.DELTA_K);
    this.width = width;
    this.height = height;
    this.from = first().withDayOfMonth(1);
    this.to = last();
    double[] all = all().map(this::told).sorted().toArray();
    this.marks = Axis.marks(all[0], all[all.length - 1], UPRIGHT_MARKS);
  }

  /**
   * @param series with one reading at least
   */
  public static SplitPicture draw(SplitSeries series, MeasureSystem system, int width, int height) {
    return new SplitDrawing(series, system, width, height).picture();
  }

  private LocalDate first() {
    Stream<LocalDate> days = series.readings().stream().map(SplitSeries.Point::date);
    return Stream.concat(days, series.cleanings().stream()).min(LocalDate::compareTo).orElseThrow();
  }

  private LocalDate last() {
    return series.asOf().plusDays(series.outlook().isPresent() ? aheadDays() : 1);
  }

  // as far as the limit and a little beyond, where that is within a year
  private int aheadDays() {
    SplitSeries.Outlook outlook = series.outlook().orElseThrow();
    if (series.limitK().isEmpty() || outlook.growthKPerDay() <= 0) {
      return LOOK_AHEAD_DAYS;
    }
    double days = (series.limitK().getAsDouble() - outlook.splitK()) / outlook.growthKPerDay();
    return (int) Math.max(90, Math.min(LOOK_AHEAD_DAYS, days * 1.15));
  }

  private DoubleStream all() {
    DoubleStream read = series.readings().stream().mapToDouble(SplitSeries.Point::splitK);
    DoubleStream levels =
        DoubleStream.concat(stream(series.cleanSplitK()), stream(series.limitK()));
    DoubleStream ahead =
        series.outlook().stream()
            .flatMapToDouble(
                o -> steps().flatMap(d -> DoubleStream.of(o.lowAfter(d), o.highAfter(d))));
    return DoubleStream.concat(read, DoubleStream.concat(levels, ahead));
  }

  private static DoubleStream stream(OptionalDouble value) {
    return value.isPresent() ? DoubleStream.of(value.getAsDouble()) : DoubleStream.empty();
  }

  // days from today to the right edge at which the band is drawn
  private DoubleStream steps() {
    double ahead = ChronoUnit.DAYS.between(series.asOf(), to);
    return IntStream.rangeClosed(0, BAND_STEPS).mapToDouble(n -> Math.rint(ahead * n / BAND_STEPS));
  }

  private double told(double splitK) {
    return measure.fromBase(splitK);
  }

  private String words(double splitK) {
    return Figures.split(splitK, system);
  }

  double x(LocalDate day) {
    double share = (double) ChronoUnit.DAYS.between(from, day) / ChronoUnit.DAYS.between(from, to);
    return tenth(LEFT + share * (width - LEFT - RIGHT));
  }

  double y(double splitK) {
    double low = marks.get(0);
    double high = marks.get(marks.size() - 1);
    double share = (told(splitK) - low) / (high - low);
    return tenth(height - BOTTOM - share * (height - TOP - BOTTOM));
  }

  private static double tenth(double place) {
    return Math.round(place * 10) / 10.0;
  }

  private SplitPicture picture() {
    return new SplitPicture(
        width,
        height,
        LEFT,
        width - RIGHT,
        TOP,
        height - BOTTOM,
        measure.label(),
        dayMarks(),
        splitMarks(),
        series.readings().stream().map(this::dot).toList(),
        runs(),
        cleanings(),
        levels(),
        band(),
        course(),
        x(series.asOf()),
        sentence());
  }

  private List<SplitPicture.Mark> dayMarks() {
    int most = (int) Math.max(2, (width - LEFT - RIGHT) / ROOM_FOR_A_MONTH);
    return Axis.months(from, to, most).stream()
        .map(mark -> new SplitPicture.Mark(x(mark.day()), mark.label()))
        .toList();
  }

  private List<SplitPicture.Mark> splitMarks() {
    return marks.stream()
        .map(m -> new SplitPicture.Mark(y(measure.toBase(m)), Figures.decimal(m, 0)))
        .toList();
  }

  private SplitPicture.Dot dot(SplitSeries.Point point) {
    String why = point.leftOut().map(r -> ", left out: " + r.text(system)).orElse("");
    String label = Figures.day(point.date()) + ": " + words(point.splitK()) + why;
    return new SplitPicture.Dot(x(point.date()), y(point.splitK()), point.used(), label);
  }

  private List<String> runs() {
    List<String> runs = new ArrayList<>();
    LocalDate begun = LocalDate.MIN;
    for (LocalDate cleaned : series.cleanings()) {
      runs.add(run(begun, cleaned));
      begun = cleaned;
    }
    runs.add(run(begun, LocalDate.MAX));
    return runs.stream().filter(points -> points.contains(" ")).toList();
  }

  private String run(LocalDate cleaned, LocalDate next) {
    return series.readings().stream()
        .filter(SplitSeries.Point::used)
        .filter(point -> !before(point, cleaned) && before(point, next))
        .map(point -> at(point.date(), point.splitK()))
        .collect(Collectors.joining(" "));
  }

  private static boolean before(SplitSeries.Point point, LocalDate cleaned) {
    return point.date().isBefore(cleaned) || point.date().equals(cleaned) && point.asFound();
  }

  private String at(LocalDate day, double splitK) {
    return x(day) + "," + y(splitK);
  }

  private List<SplitPicture.Mark> cleanings() {
    return series.cleanings().stream()
        .map(day -> new SplitPicture.Mark(x(day), "Coil cleaned " + Figures.day(day)))
        .toList();
  }

  // the upper line is written above, the lower one below, so that they never run together
  private List<SplitPicture.Level> levels() {
    List<SplitPicture.Level> levels = new ArrayList<>();
    series.cleanSplitK().ifPresent(k -> levels.add(level("clean", "clean split", k, BELOW)));
    series.limitK().ifPresent(k -> levels.add(level("limit", "limit", k, ABOVE)));
    return levels;
  }

  private SplitPicture.Level level(String name, String title, double splitK, double offset) {
    double y = y(splitK);
    return new SplitPicture.Level(name, y, title + " " + words(splitK), tenth(y + offset));
  }

  private String band() {
    return series.outlook().map(this::band).orElse("");
  }

  private String band(SplitSeries.Outlook outlook) {
    double[] days = steps().toArray();
    List<String> points = new ArrayList<>();
    for (double day : days) {
      points.add(ahead(day, outlook.highAfter(day)));
    }
    for (int i = days.length - 1; i >= 0; i--) {
      points.add(ahead(days[i], outlook.lowAfter(days[i])));
    }
    return String.join(" ", points);
  }

  private String ahead(double days, double splitK) {
    return at(series.asOf().plusDays((long) days), splitK);
  }

  private String course() {
    double end = ChronoUnit.DAYS.between(series.asOf(), to);
    return series
        .outlook()
        .map(o -> ahead(0, o.splitK()) + " " + ahead(end, o.after(end)))
        .orElse("");
  }

  private String sentence() {
    SplitSeries.Point latest = series.readings().get(series.readings().size() - 1);
    StringBuilder told = new StringBuilder();
    told.append(Words.count(series.readings().size(), "reading", "readings"));
    told.append(" of the condensing split, the latest ").append(words(latest.splitK()));
    told.append(" on ").append(Figures.day(latest.date())).append(". ");
    series.cleanSplitK().ifPresent(k -> told.append("Clean split ").append(words(k)).append(". "));
    series.limitK().ifPresent(k -> told.append("Limit ").append(words(k)).append(". "));
    told.append(Words.count(series.cleanings().size(), "cleaning", "cleanings")).append(".");
    return told.toString();
  }
}
