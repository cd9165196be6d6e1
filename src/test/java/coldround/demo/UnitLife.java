package coldround.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lives through the days of one unit and writes down its visits and faults. */
final class UnitLife {

  private static final LocalDate NEVER = LocalDate.of(2000, 1, 1);
  private static final int DAYS_BETWEEN_CALLS = 6;

  private final Story story;
  private final Plant plant;
  private final SiteRounds rounds;
  private final State state;
  private final Workbench bench;
  private final Chance chance;
  private final double cutoutC;
  private LocalDate promised;
  private LocalDate lastCall = NEVER;
  private LocalDate lastLockout = NEVER;

  final List<Attendance> visits = new ArrayList<>();
  final List<Mishap> mishaps = new ArrayList<>();

  UnitLife(Story story, Plant plant, SiteRounds rounds, Gauge gauge) {
    this.story = story;
    this.plant = plant;
    this.rounds = rounds;
    this.chance = new Chance(plant.id());
    this.state = new State(plant, story.foulingKelvinADay(plant), chance);
    this.bench = new Workbench(story, plant, state, gauge, chance);
    this.cutoutC = cutoutC(plant.model(), gauge);
  }

  private static double cutoutC(Model model, Gauge gauge) {
    return model.cutoutPsig().isEmpty() || model.transcritical()
        ? Double.POSITIVE_INFINITY
        : gauge.condensingC(model.cutoutPsig().getAsDouble());
  }

  void live() {
    LocalDate first = plant.installed().filter(Story.FIRST_DAY::isBefore).orElse(Story.FIRST_DAY);
    LocalDate end = plant.retired().orElse(Story.LAST_DAY);
    for (LocalDate day = first; !day.isAfter(end); day = day.plusDays(1)) {
      state.day();
      happenings(day);
    }
  }

  private void happenings(LocalDate day) {
    Optional<Trouble> trouble = plant.care().calls() ? trouble(day) : Optional.empty();
    if (trouble.isPresent()) {
      breakdown(day, trouble.get());
    } else if (promised != null && !day.isBefore(promised)) {
      visits.add(bench.cleaning(day, outdoorC(day, workingHour())));
      promised = null;
    } else if (rounds.attends(plant.care(), day)) {
      planned(day);
    }
  }

  private Optional<Trouble> trouble(LocalDate day) {
    if (plant.has("dying") && plant.retired().filter(day.plusDays(3)::equals).isPresent()) {
      return Trouble.trouble("compressor-failed", "burn-out", 72);
    }
    if (day.isBefore(lastCall.plusDays(DAYS_BETWEEN_CALLS))) {
      return Optional.empty();
    }
    double airC = plant.site().condenserAirC(plant.where(), outdoorC(day, 1));
    return Trouble.today(plant, state, airC + state.splitK(), cutoutC)
        .or(() -> Trouble.byChance(plant, chance));
  }

  private void breakdown(LocalDate day, Trouble trouble) {
    lastCall = day;
    Attendance visit = bench.breakdown(day, trouble, outdoorC(day, chance.between(0.86, 0.97)));
    visits.add(visit);
    double lost = chance.happens(0.3) ? trouble.downtimeH() * chance.between(15, 160) : 0;
    double stock = plant.model().cools() && trouble.downtimeH() >= 5 ? lost : 0;
    mishaps.add(new Mishap(plant, day, trouble, day, stock));
    if (trouble.mode().equals("high-head-lockout") && state.condenser.riseK() > 4) {
      promiseCleaning(day);
    }
  }

  /** The wash is promised for a later day; those who let things slide mostly put it off. */
  private void promiseCleaning(LocalDate day) {
    boolean again = lastLockout.plusDays(40).isAfter(day);
    boolean agreed = plant.care() != Care.NEGLECTED || chance.happens(again ? 0.8 : 0.3);
    lastLockout = day;
    if (agreed && promised == null) {
      promised = SiteRounds.weekday(day.plusDays(chance.whole(3, 16)));
    }
  }

  private void planned(LocalDate day) {
    double outdoorC = outdoorC(day, workingHour());
    boolean clean = state.condenser.riseK() > plant.care().cleanAtK;
    visits.add(clean ? bench.cleaning(day, outdoorC) : bench.inspection(day, outdoorC));
  }

  private double workingHour() {
    return chance.between(0.4, 0.95);
  }

  private double outdoorC(LocalDate day, double shareOfDay) {
    return story.weather().airC(day, plant.site().elevationM(), shareOfDay);
  }
}
