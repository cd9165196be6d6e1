package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.scoring.MonthMargin;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Draws the trip ambient of the coming year, in the reader's unit. */
public final class TripDrawing {

  private static final double LEFT = 40;
  private static final double RIGHT = 12;
  private static final double TOP = 30;
  private static final double BOTTOM = 30;
  private static final int YEAR = 365;
  private static final int STEPS = 12;
  private static final int UPRIGHT_MARKS = 6;
  private static final double ROOM_FOR_A_MONTH = 56;

  private final TripSeries series;
  private final MeasureSystem system;
  private final Measure measure;
  private final int width;
  private final int height;
  private final LocalDate to;
  private final List<Double> marks;

  private TripDrawing(TripSeries series, MeasureSystem system, int width, int height) {
    this.series = series;
    this.system = system;
    this.measure = system.measureFor(Measure.DEG_C);
    this.width = width;
    this.height = height;
    this.to = series.asOf().plusDays(YEAR);
    double[] all = all().map(measure::fromBase).sorted().toArray();
    this.marks = Axis.marks(all[0], all[all.length - 1], UPRIGHT_MARKS);
  }

  public static TripPicture draw(TripSeries series, MeasureSystem system, int width, int height) {
    return new TripDrawing(series, system, width, height).picture();
  }

  private DoubleStream all() {
    DoubleStream design =
        series.months().stream()
            .flatMapToDouble(
                m -> DoubleStream.of(m.designAmbientC(), m.designAmbientC() + series.limitK()));
    DoubleStream trip =
        IntStream.of(0, YEAR)
            .mapToDouble(day -> day)
            .flatMap(d -> DoubleStream.of(series.lowC(d), series.highC(d)));
    return DoubleStream.concat(design, trip);
  }

  private double x(double days) {
    return tenth(LEFT + days / YEAR * (width - LEFT - RIGHT));
  }

  private double x(LocalDate day) {
    return x(Math.max(0, Math.min(YEAR, ChronoUnit.DAYS.between(series.asOf(), day))));
  }

  private double y(double celsius) {
    double low = marks.get(0);
    double high = marks.get(marks.size() - 1);
    double share = (measure.fromBase(celsius) - low) / (high - low);
    return tenth(height - BOTTOM - share * (height - TOP - BOTTOM));
  }

  private static double tenth(double place) {
    return Math.round(place * 10) / 10.0;
  }

  private TripPicture picture() {
    return new TripPicture(
        width,
        height,
        LEFT,
        width - RIGHT,
        TOP,
        height - BOTTOM,
        measure.label(),
        dayMarks(),
        marks.stream()
            .map(m -> new SplitPicture.Mark(y(measure.toBase(m)), Figures.decimal(m, 0)))
            .toList(),
        steps(0),
        steps(series.limitK()),
        x(0) + "," + y(series.tripC(0)) + " " + x(YEAR) + "," + y(series.tripC(YEAR)),
        band(),
        crossing(),
        crossing().at() > width / 2.0,
        sentence());
  }

  private List<SplitPicture.Mark> dayMarks() {
    int most = (int) Math.max(2, (width - LEFT - RIGHT) / ROOM_FOR_A_MONTH);
    return Axis.months(series.asOf(), to, most).stream()
        .map(mark -> new SplitPicture.Mark(x(mark.day()), mark.label()))
        .toList();
  }

  /** The design ambient of each month, so much higher. */
  private String steps(double overK) {
    List<String> points = new ArrayList<>();
    for (MonthMargin month : series.months()) {
      double y = y(month.designAmbientC() + overK);
      points.add(x(month.month().atDay(1)) + "," + y);
      points.add(x(month.month().plusMonths(1).atDay(1)) + "," + y);
    }
    return String.join(" ", points);
  }

  private String band() {
    List<String> points = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double day = (double) YEAR * i / STEPS;
      points.add(x(day) + "," + y(series.highC(day)));
    }
    for (int i = STEPS; i >= 0; i--) {
      double day = (double) YEAR * i / STEPS;
      points.add(x(day) + "," + y(series.lowC(day)));
    }
    return String.join(" ", points);
  }

  private SplitPicture.Mark crossing() {
    return series
        .runsOut()
        .map(day -> new SplitPicture.Mark(x(day), Figures.day(day)))
        .orElse(new SplitPicture.Mark(0, ""));
  }

  private String sentence() {
    double hottestC =
        series.months().stream().mapToDouble(MonthMargin::designAmbientC).max().orElseThrow();
    String begins =
        "The unit locks out at %s of ambient now and at %s in a year, if it is not cleaned. The design ambient is %s in the hottest month. "
            .formatted(degrees(series.tripC(0)), degrees(series.tripC(YEAR)), degrees(hottestC));
    String margin = Figures.quantity(new Quantity(series.limitK(), Measure.DELTA_K), system);
    return begins
        + series
            .runsOut()
            .map(day -> "The margin falls below " + margin + " on " + Figures.day(day) + ".")
            .orElse("The margin stays above " + margin + " through the year.");
  }

  private String degrees(double celsius) {
    return Figures.quantity(new Quantity(celsius, Measure.DEG_C), system);
  }
}
