package coldround.scoring;

import coldround.scoring.CleanSplit.Basis;
import coldround.scoring.Cleanings.Cycle;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The split a unit is taken to have when clean: measured soon after a cleaning, else by design. */
final class CleanSplits {

  private final Limits limits;

  CleanSplits(Limits limits) {
    this.limits = limits;
  }

  /** What design or kind say, without regard to measurements. */
  CleanSplit given(Evidence evidence) {
    OptionalDouble design = evidence.unit().plateBase("design_split");
    return design.isPresent() && design.getAsDouble() > 0
        ? new CleanSplit(
            design.getAsDouble(),
            limits.value(LimitName.DESIGN_SPLIT_SD),
            Basis.DESIGN,
            Optional.empty(),
            limits.source(LimitName.DESIGN_SPLIT_SD))
        : new CleanSplit(
            evidence.kind().designSplitK(),
            limits.value(LimitName.KIND_SPLIT_SD),
            Basis.KIND,
            Optional.empty(),
            evidence.kind().source());
  }

  /**
   * What a measured clean split may be at most: above it, dirt is left or something else is wrong.
   */
  double mostK(CleanSplit given) {
    return given.splitK() + limits.value(overGiven(given));
  }

  static LimitName overGiven(CleanSplit given) {
    return given.basis() == Basis.DESIGN ? LimitName.CLEAN_OVER_DESIGN : LimitName.CLEAN_OVER_KIND;
  }

  CleanSplit of(CleanSplit given, List<Cycle> cycles) {
    SplitReading lowest = null;
    for (Cycle cycle : cycles) {
      SplitReading its = lowest(cycle);
      if (its != null && (lowest == null || splitK(its) < splitK(lowest))) {
        lowest = its;
      }
    }
    return lowest == null ? given : measured(given, lowest);
  }

  private CleanSplit measured(CleanSplit given, SplitReading lowest) {
    double most = mostK(given);
    boolean fits = splitK(lowest) <= most;
    return new CleanSplit(
        Math.min(splitK(lowest), most),
        limits.value(LimitName.READING_SD),
        fits ? Basis.MEASURED : Basis.MEASURED_HELD_DOWN,
        Optional.of(lowest.date()),
        limits.source(fits ? LimitName.CLEAN_WINDOW : overGiven(given)));
  }

  /** The lowest split within the window after the cycle's cleaning; null for none. */
  SplitReading lowest(Cycle cycle) {
    SplitReading lowest = null;
    if (cycle.cleaned() != null) {
      for (int i = 0; i < cycle.used().size(); i++) {
        SplitReading reading = cycle.used().get(i);
        if (cycle.days(i) <= limits.value(LimitName.CLEAN_WINDOW)
            && (lowest == null || splitK(reading) < splitK(lowest))) {
          lowest = reading;
        }
      }
    }
    return lowest;
  }

  static double splitK(SplitReading reading) {
    return reading.splitK().getAsDouble();
  }
}
