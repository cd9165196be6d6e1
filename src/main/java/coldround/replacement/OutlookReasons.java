package coldround.replacement;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.AgeState;
import coldround.scoring.Assessment;
import coldround.scoring.FaultEvent;
import coldround.scoring.FaultTrend;
import coldround.upkeep.RunningCost;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Says what the figures of an outlook rest on, with the readings behind them. */
final class OutlookReasons {

  private static final int LATEST = 4;

  private final Economics economics;
  private final Assessment unit;
  private final List<Reason> reasons = new ArrayList<>();

  OutlookReasons(Economics economics, Assessment unit) {
    this.economics = economics;
    this.unit = unit;
  }

  List<Reason> all(
      Terms terms,
      double age,
      List<YearCost> keeping,
      double[] dying,
      FaultCost fault,
      GasCost gas,
      RunningCost running,
      ReplacingCost replacing) {
    faults(terms, keeping, fault);
    age(age, dying);
    gas(gas);
    energy(terms, keeping, running);
    price(replacing, running);
    return List.copyOf(reasons);
  }

  private Quantity money(double amount) {
    return economics.costs().money(amount);
  }

  private static String figure(double value) {
    return new BigDecimal(value).round(new MathContext(2)).toPlainString();
  }

  private static Quantity years(double value) {
    return new Quantity(value, Measure.YEAR);
  }

  private void add(String code, String template, Source source, Object... namesAndFacts) {
    Map<String, Object> facts = new LinkedHashMap<>();
    for (int i = 0; i < namesAndFacts.length; i += 2) {
      facts.put((String) namesAndFacts[i], namesAndFacts[i + 1]);
    }
    reasons.add(new Reason(code, template, facts, source));
  }

  private void faults(Terms terms, List<YearCost> keeping, FaultCost fault) {
    String seen =
        unit.faults().known()
            ? "{events} faults on record in {observed}"
            : "No record of faults, so the usual rate of its kind is taken";
    String template =
        seen
            + (unit.faults().events().isEmpty() ? "" : ", the latest {latest}")
            + ": {first} a year expected in {firstYear}, {last} in {lastYear}. A fault costs {each} on"
            + " average: {repair} for the call and repair, {stock} for goods, {downtime} for the time"
            + " without it. Most of the repair money goes to: {mode}"
            + (worsening()
                ? ". They come faster; repairs end some of that, so it is let fade"
                : "");
    int last = keeping.size() - 1;
    add(
        "expected-faults",
        template,
        economics.rate(EconomicRate.AGEING_SHARE).source(),
        "events",
        unit.faults().events().size(),
        "latest",
        latest(),
        "observed",
        years(unit.faults().observedYears()),
        "first",
        figure(keeping.get(0).faults()),
        "firstYear",
        "" + terms.firstYear(),
        "last",
        figure(keeping.get(last).faults()),
        "lastYear",
        "" + (terms.firstYear() + last),
        "each",
        money(fault.total()),
        "repair",
        money(fault.repair()),
        "stock",
        money(fault.stock()),
        "downtime",
        money(fault.downtime()),
        "mode",
        fault.dearest());
  }

  private boolean worsening() {
    return unit.faults().trend().map(FaultTrend::worsening).orElse(false);
  }

  private String latest() {
    List<FaultEvent> events = unit.faults().events();
    return events.subList(Math.max(0, events.size() - LATEST), events.size()).stream()
        .map(event -> event.date() + " " + economics.modeName(event.mode()))
        .collect(Collectors.joining(", "));
  }

  private void age(double age, double[] dying) {
    AgeState state = unit.age();
    double alive = 1;
    for (double chance : dying) {
      alive *= 1 - chance;
    }
    String basis =
        switch (state.basis()) {
          case INSTALLED -> "{age} old at the start of the plan";
          case SERIAL_YEAR -> "{age} old at the start of the plan by its serial number";
          case FIRST_SEEN -> "At least {age} old at the start of the plan; nobody knows more";
          case NONE ->
              "Age unknown, taken as {age} at the start of the plan, as half-way through the usual life";
        };
    add(
        "age",
        basis
            + ". Half of its kind are replaced or dead by {median}; the chance that it dies within"
            + " the plan is {chance}",
        state.source(),
        "age",
        years(age),
        "median",
        years(state.life().medianYears()),
        "chance",
        new Quantity(100 * (1 - alive), Measure.PERCENT));
  }

  private void gas(GasCost gas) {
    if (gas.kgPerYear() <= 0) {
      String why =
          unit.leak().chargeKg().isEmpty() ? "its charge is not on record" : "none is lost";
      add("no-gas", "No refrigerant is counted: {why}", gas.price().source(), "why", why);
      return;
    }
    int last = gas.supply().length - 1;
    add(
        "refrigerant-lost",
        (gas.measured() ? "It loses" : "Units of its kind lose")
            + " {lost} of {gas} a year at {price} a pound, {first} in the first year and {then} in the"
            + " last, when law leaves {supply} of the supply",
        gas.price().source(),
        "lost",
        new Quantity(gas.kgPerYear(), Measure.KG).to(Measure.POUND),
        "gas",
        unit.supply().refrigerant().isEmpty() ? "refrigerant" : unit.supply().refrigerant(),
        "price",
        gas.price().value(),
        "first",
        money(gas.perYear()[0]),
        "then",
        money(gas.perYear()[last]),
        "supply",
        new Quantity(100 * gas.supply()[last], Measure.PERCENT));
  }

  private void energy(Terms terms, List<YearCost> keeping, RunningCost running) {
    add(
        "energy",
        "Its compressor uses about {bill} of electricity a year with a clean coil ("
            + (running.measured() ? "from its amps and volts" : "usual of its kind")
            + "); age, dirt and a new unit's better efficiency make {extra} of that avoidable in"
            + " {firstYear}. The condenser gains {fouling}",
        running.energySource(),
        "bill",
        money(running.electricityPerYear()),
        "extra",
        money(keeping.get(0).energy()),
        "firstYear",
        "" + terms.firstYear(),
        "fouling",
        new Quantity(unit.coil().foulingKPerDay(), Measure.DELTA_K_PER_DAY));
    unit.coil()
        .latestSplit()
        .ifPresent(
            split ->
                add(
                    "latest-split",
                    "Latest split read on {date}; the split expected now is {split}, {excess} above"
                        + " the clean one",
                    running.energySource(),
                    "date",
                    split.date(),
                    "split",
                    new Quantity(unit.coil().splitK(), Measure.DELTA_K),
                    "excess",
                    new Quantity(unit.coil().excessK(), Measure.DELTA_K)));
  }

  private void price(ReplacingCost replacing, RunningCost running) {
    String basis =
        replacing.own()
            ? "by the equipment list"
            : running.measured()
                ? "as usual for its kind and size: its compressor takes {power} kW, {usual} kW are usual"
                : "as usual for its kind, its size not being known";
    add(
        "price",
        "A new one costs {price} "
            + basis
            + "; {disposal} to dispose of the old one, {recovery} to recover its refrigerant, and"
            + " {shutdown} for access and shutdown once for the site and year",
        replacing.source(),
        "price",
        money(replacing.price()),
        "power",
        figure(running.kilowatts()),
        "usual",
        figure(running.usualKilowatts()),
        "disposal",
        money(replacing.disposal()),
        "recovery",
        money(replacing.recovery()),
        "shutdown",
        money(replacing.shutdown()));
  }
}
