package coldround.rounds;

import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.rounds.search.Fault;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Says why a call is on its day, and why another is in no round. */
final class Told {

  private final RoundRules rules;
  private final Prices prices;
  private final Value value;

  Told(RoundRules rules, Prices prices, Value value) {
    this.rules = rules;
    this.prices = prices;
    this.value = value;
  }

  Why planned(Call call, LocalDate day) {
    if (call.kept() != null) {
      String template = "it stays as it was planned: it is {why}";
      return why("kept", template, Figure.KEEP_WITHIN, day, Map.of("why", call.kept().why()));
    }
    if (call.mandatory() && call.lawful() == null) {
      Map<String, Object> facts = Map.of("minutes", call.minutes());
      String template = "an emergency of {minutes} minutes put in where it changes least";
      return why("emergency", template, Figure.KEEP_WITHIN, day, facts);
    }
    if (call.mandatory()) {
      String template = "the law asks for it by {lawful}";
      Map<String, Object> facts = Map.of("lawful", call.lawful());
      return why("lawful", template, Figure.LATE_BY_LAW, day, facts);
    }
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("next", value.nextChance());
    facts.put("waiting", money(value.waitingUntil(call, value.nextChance())));
    facts.put("way", money(value.comingBack(call)));
    String template =
        "to leave it until {next} would be expected to cost {waiting} for waiting and {way} for"
            + " coming back; the way there from the stops around it costs less";
    return why("worth-the-way", template, Figure.NEXT_CHANCE, day, facts);
  }

  Why leftOut(Call call, Fault fault) {
    if (fault != Fault.DEARER_THAN_LEAVING_OUT) {
      Map<String, Object> facts = new LinkedHashMap<>();
      facts.put("why", sentence(fault));
      facts.put("skills", Shifts.told(call.skills()));
      facts.put("minutes", call.minutes());
      String template =
          call.skills().isEmpty()
              ? "{why}; it takes {minutes} minutes"
              : "{why}; it takes {minutes} minutes and asks for {skills}";
      return why(code(fault), template, Figure.CALL_MOST, null, facts);
    }
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("next", value.nextChance());
    facts.put("waiting", money(value.waitingUntil(call, value.nextChance())));
    facts.put("way", money(value.comingBack(call)));
    facts.put("due", call.due());
    String template =
        "due on {due}: the way there costs more than the {waiting} that waiting until {next} is"
            + " expected to cost, with {way} for coming back";
    return why("may-wait", template, Figure.NEXT_CHANCE, value.nextChance(), facts);
  }

  /** In the words of those who plan rounds; the search speaks of vehicles and stops. */
  private static String sentence(Fault fault) {
    return switch (fault) {
      case NO_VEHICLE, SHIFT_WITHOUT_LENGTH -> "no technician works in these days";
      case WINDOW_NEVER_OPEN ->
          "the site is not open long enough on any day on which it may be done";
      case PRICE_OR_PIN_EXCLUDES_ALL -> "whom it is booked with cannot do it then";
      case SKILL_MISSING -> "nobody who works in these days has all the competences";
      case NOT_REACHABLE ->
          "no way there and back is known for anybody who may do it: import travel times or give"
              + " coordinates";
      case LONGER_THAN_ANY_SHIFT ->
          "the way there and back and the work take longer than any working day, overtime"
              + " included, of anybody who may do it";
      case WINDOW_OUTSIDE_SHIFTS ->
          "the site is not open long enough while anybody who may do it works, the way there and"
              + " back counted";
      case NO_ROOM -> "the rounds have no room for it";
      default -> fault.text();
    };
  }

  Why unusable(String code, String message) {
    return why(code, "{why}", Figure.CALL_MOST, null, Map.of("why", message));
  }

  private static String code(Fault fault) {
    return fault.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private Quantity money(double amount) {
    return new Quantity(amount, prices.currency());
  }

  private Why why(
      String code, String template, Figure figure, LocalDate date, Map<String, Object> facts) {
    Source source = rules.source(figure);
    return Why.of(new Reason(code, template, facts, source), true, date);
  }
}
