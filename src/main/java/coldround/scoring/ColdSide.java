package coldround.scoring;

import coldround.reason.Reason;
import coldround.scoring.Gas.Side;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The evaporator of a unit: temperature difference, superheat, drop of the air, grade. */
final class ColdSide {

  private static final String STARVED =
      "Coil difference {difference} on {date}, usual {least} to {most}, with {superheat} superheat:"
          + " the coil is starved. Check charge, drier and expansion valve";
  private static final String WIDE =
      "Coil difference {difference} on {date}, usual {least} to {most}: look for ice, dirt or a fan"
          + " that stands still";
  private static final String NARROW =
      "Coil difference {difference} on {date}, usual {least} to {most}: look for an oversized valve,"
          + " low load or a compressor that does not pump";
  private static final String FLOOD =
      "Superheat {superheat} on {date}, below {least}: liquid may reach the compressor. Check valve,"
          + " bulb and air flow";
  private static final String HIGH =
      "Superheat {superheat} on {date}, above {most}: the coil gets too little liquid. Check charge,"
          + " drier and valve";
  private static final String AIR =
      "The air drops by {drop} across the evaporator on {date}, usual {least} to {most}: check fans,"
          + " coil and readings";

  private final Limits limits;
  private final ReadingHabits habits;

  ColdSide(ScoringRules rules) {
    this.limits = rules.limits();
    this.habits = rules.habits();
  }

  /** Figures of one visit; NaN where they cannot be told. */
  private record Cold(
      LocalDate date,
      double evaporatingC,
      double differenceK,
      double superheatK,
      double subcoolingK,
      double airDropK) {

    boolean any() {
      return !Double.isNaN(differenceK)
          || !Double.isNaN(superheatK)
          || !Double.isNaN(subcoolingK)
          || !Double.isNaN(airDropK);
    }
  }

  EvaporatorState state(Evidence evidence) {
    Optional<Cold> cold = latest(evidence);
    int graded = Electrics.latestGrade(evidence, "evaporator_coil", "evaporator-coil-cleaned");
    int cleaned = evidence.lastWork("evaporator-coil-cleaned");
    Optional<String> grade =
        graded >= 0
            ? evidence.visit(graded).finding("evaporator_coil")
            : Optional.of(GradeShares.CLEAN).filter(clean -> cleaned >= 0);
    int gradedOn = Math.max(graded, cleaned);
    return new EvaporatorState(
        cold.map(Cold::date),
        optional(cold.map(Cold::evaporatingC)),
        optional(cold.map(Cold::differenceK)),
        optional(cold.map(Cold::superheatK)),
        optional(cold.map(Cold::subcoolingK)),
        optional(cold.map(Cold::airDropK)),
        grade,
        gradedOn < 0 ? Optional.empty() : Optional.of(evidence.visit(gradedOn).date()),
        cold.map(c -> findings(evidence.kind(), c)).orElse(List.of()));
  }

  private static OptionalDouble optional(Optional<Double> value) {
    return value.isEmpty() || value.get().isNaN()
        ? OptionalDouble.empty()
        : OptionalDouble.of(value.get());
  }

  private Optional<Cold> latest(Evidence evidence) {
    for (int i = evidence.figures().size() - 1; i >= 0; i--) {
      Cold cold = cold(evidence, i);
      if (cold.any() && habits.phraseIn(evidence.visit(i).note()).isEmpty()) {
        return Optional.of(cold);
      }
    }
    return Optional.empty();
  }

  private static Cold cold(Evidence evidence, int index) {
    VisitFigures figures = evidence.figures().get(index);
    Gas gas = index < evidence.gasFrom() ? Gas.NONE : evidence.gas();
    double dewC = gas.temperatureC(Side.DEW, figures.suctionKpa);
    double bubbleC =
        Double.isNaN(figures.liquidLineC)
            ? Double.NaN
            : gas.temperatureC(Side.BUBBLE, figures.headKpa);
    return new Cold(
        figures.visit.date(),
        dewC,
        figures.coldAirC() - dewC,
        figures.suctionLineC - dewC,
        bubbleC - figures.liquidLineC,
        figures.evaporatorInC - figures.evaporatorOutC);
  }

  private List<Reason> findings(KindRule kind, Cold cold) {
    List<Reason> findings = new ArrayList<>();
    difference(kind, cold).ifPresent(findings::add);
    superheat(kind, cold).ifPresent(findings::add);
    airDrop(kind, cold).ifPresent(findings::add);
    return findings;
  }

  private static Optional<Reason> difference(KindRule kind, Cold cold) {
    if (kind.differenceLeastK().isEmpty() || kind.differenceMostK().isEmpty()) {
      return Optional.empty();
    }
    double least = kind.differenceLeastK().getAsDouble();
    double most = kind.differenceMostK().getAsDouble();
    if (cold.differenceK > most) {
      boolean starved = cold.superheatK > kind.superheatMostK().orElse(Double.MAX_VALUE);
      return Optional.of(
          starved
              ? difference("evaporator-starved", STARVED, kind, cold, least, most)
              : difference("evaporator-difference-high", WIDE, kind, cold, least, most));
    }
    return cold.differenceK < least
        ? Optional.of(difference("evaporator-difference-low", NARROW, kind, cold, least, most))
        : Optional.empty();
  }

  private static Reason difference(
      String code, String template, KindRule kind, Cold cold, double least, double most) {
    return new Reason(
        code,
        template,
        Facts.of(
            "difference",
            Facts.kelvin(cold.differenceK),
            "date",
            cold.date,
            "least",
            Facts.kelvin(least),
            "most",
            Facts.kelvin(most),
            "superheat",
            Double.isNaN(cold.superheatK) ? "unknown" : Facts.kelvin(cold.superheatK)),
        kind.source());
  }

  private Optional<Reason> superheat(KindRule kind, Cold cold) {
    if (limits.under(LimitName.SUPERHEAT_FLOOD, cold.superheatK)) {
      return Optional.of(
          new Reason(
              "superheat-low",
              FLOOD,
              Facts.of(
                  "superheat",
                  Facts.kelvin(cold.superheatK),
                  "date",
                  cold.date,
                  "least",
                  limits.shown(LimitName.SUPERHEAT_FLOOD)),
              limits.source(LimitName.SUPERHEAT_FLOOD)));
    }
    return cold.superheatK > kind.superheatMostK().orElse(Double.MAX_VALUE)
        ? Optional.of(
            new Reason(
                "superheat-high",
                HIGH,
                Facts.of(
                    "superheat",
                    Facts.kelvin(cold.superheatK),
                    "date",
                    cold.date,
                    "most",
                    Facts.kelvin(kind.superheatMostK().orElseThrow())),
                kind.source()))
        : Optional.empty();
  }

  /** Of boxes only: an air conditioner drops its air by more. */
  private Optional<Reason> airDrop(KindRule kind, Cold cold) {
    boolean off =
        limits.under(LimitName.AIR_DROP_LEAST, cold.airDropK)
            || limits.over(LimitName.AIR_DROP_MOST, cold.airDropK);
    if (!kind.food() || !off) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "evaporator-air-drop",
            AIR,
            Facts.of(
                "drop",
                Facts.kelvin(cold.airDropK),
                "date",
                cold.date,
                "least",
                limits.shown(LimitName.AIR_DROP_LEAST),
                "most",
                limits.shown(LimitName.AIR_DROP_MOST)),
            limits.source(LimitName.AIR_DROP_LEAST)));
  }
}
