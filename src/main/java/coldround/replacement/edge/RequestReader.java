package coldround.replacement.edge;

import coldround.fleet.Today;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.replacement.Discount;
import coldround.replacement.EconomicRate;
import coldround.replacement.Economics;
import coldround.replacement.Moved;
import coldround.replacement.PlanOrder;
import coldround.replacement.Terms;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Turns a request into an order, or tells all that is wrong with it. */
final class RequestReader {

  private static final int USUAL_RUNS = 1000;
  private static final int MOST_RUNS = 5000;
  private static final double LEAST_RATE = -50;
  private static final double MOST_RATE = 100;

  private final PlanRequest asked;
  private final Economics economics;
  private final Today today;
  private final List<FieldError> errors = new ArrayList<>();

  RequestReader(PlanRequest asked, Economics economics, Today today) {
    this.asked = asked;
    this.economics = economics;
    this.today = today;
  }

  Terms terms() {
    LocalDate asOf = asked.asOf() == null ? today.usually() : asked.asOf();
    int firstYear = asked.firstYear() == null ? asOf.getYear() + 1 : asked.firstYear();
    if (firstYear < asOf.getYear() || firstYear > asOf.getYear() + Terms.LONGEST) {
      wrong("/firstYear", firstYear, "is " + asOf.getYear() + " or one of the 20 years after it");
    }
    int horizon =
        asked.horizon() == null ? (int) economics.value(EconomicRate.HORIZON) : asked.horizon();
    if (horizon < 1 || horizon > Terms.LONGEST) {
      wrong("/horizon", horizon, "is a number of years from 1 to " + Terms.LONGEST);
    }
    boolean nominal = "nominal".equals(asked.basis());
    if (asked.basis() != null && !nominal && !asked.basis().equals("real")) {
      wrong("/basis", asked.basis(), "is real or nominal");
    }
    double inflation = percent("/inflation", asked.inflation(), inflation());
    double rate = percent("/discountRate", asked.discountRate(), economics.discount().amount());
    check();
    Discount said = new Discount(rate / 100);
    // the rate of the table is real, whatever was asked for
    boolean asNominal = nominal && asked.discountRate() != null;
    Discount real = asNominal ? said.real(inflation / 100) : said;
    return new Terms(asOf, firstYear, horizon, real, inflation / 100, nominal);
  }

  private double inflation() {
    return 100 * economics.value(EconomicRate.INFLATION);
  }

  private double percent(String field, PlanRequest.Amount amount, double unsaid) {
    if (amount == null) {
      return unsaid;
    }
    double value = amount.value() == null ? Double.NaN : amount.value();
    if (!Set.of("%", "%/a").contains(String.valueOf(amount.unit()))) {
      wrong(field, amount.unit(), "is told in %/a, such as {\"value\": 7, \"unit\": \"%/a\"}");
    } else if (!(value >= LEAST_RATE && value <= MOST_RATE)) {
      wrong(field, value, "is a rate from " + LEAST_RATE + " to " + MOST_RATE + " % a year");
    }
    return value;
  }

  PlanOrder order(Terms terms, Map<String, String> tags, double seconds) {
    double carryOver = asked.carryOver() == null ? 1 : asked.carryOver();
    if (!(carryOver >= 0 && carryOver <= 1)) {
      wrong("/carryOver", carryOver, "is a share from 0 to 1");
    }
    int runs = asked.runs() == null ? USUAL_RUNS : asked.runs();
    if (runs < 2 || runs > MOST_RUNS) {
      wrong("/runs", runs, "is a number from 2 to " + MOST_RUNS);
    }
    double[] limits = limits(terms);
    Map<String, Integer> must = must(terms, tags);
    Map<String, Integer> mustNot = mustNot(terms, tags);
    Moved moved = moved();
    long seed = asked.seed() == null ? 1 : asked.seed();
    return new PlanOrder(terms, limits, carryOver, must, mustNot, seed, runs, seconds, moved);
  }

  private Moved moved() {
    PlanRequest.Factors said =
        asked.factors() == null ? new PlanRequest.Factors(null, null, null, null) : asked.factors();
    double price = factor("price", said.price());
    double faults = factor("faults", said.faults());
    double refrigerant = factor("refrigerant", said.refrigerant());
    double electricity = factor("electricity", said.electricity());
    check();
    return new Moved(price, faults, refrigerant, electricity);
  }

  private double factor(String name, Double said) {
    double factor = said == null ? 1 : said;
    if (!(factor >= Moved.LEAST && factor <= Moved.MOST)) {
      wrong("/factors/" + name, factor, "is " + Moved.LEAST + " to " + Moved.MOST);
    }
    return factor;
  }

  private double[] limits(Terms terms) {
    double[] limits = new double[terms.horizon()];
    Arrays.fill(limits, Double.POSITIVE_INFINITY);
    if (asked.limit() != null && asked.limits() != null) {
      wrong("/limits", "", "and limit cannot both be said");
    } else if (asked.limit() != null) {
      Arrays.fill(limits, money("/limit", asked.limit()));
    } else if (asked.limits() != null && asked.limits().size() != limits.length) {
      wrong(
          "/limits",
          asked.limits().size(),
          "needs one for each of the " + limits.length + " years");
    } else if (asked.limits() != null) {
      Arrays.setAll(limits, year -> money("/limits/" + year, asked.limits().get(year)));
    }
    return limits;
  }

  private double money(String field, PlanRequest.Amount amount) {
    String currency = economics.costs().currency().code();
    if (amount == null || !currency.equals(amount.unit())) {
      wrong(
          field,
          amount == null ? "" : amount.unit(),
          "is told in " + currency + ", as the costs are");
      return 0;
    }
    double value = amount.value() == null ? Double.NaN : amount.value();
    if (!(value >= 0 && value <= 1e10)) {
      wrong(field, value, "is an amount from 0 to 10000000000");
      return 0;
    }
    return value;
  }

  private Map<String, Integer> must(Terms terms, Map<String, String> tags) {
    Map<String, Integer> must = new HashMap<>();
    List<PlanRequest.Must> all = asked.must() == null ? List.of() : asked.must();
    for (int i = 0; i < all.size(); i++) {
      String field = "/must/" + i;
      PlanRequest.Must one = all.get(i);
      if (one == null || one.by() == null || one.by() < terms.firstYear()) {
        wrong(field + "/by", one == null ? "" : one.by(), "is a year of the plan");
      } else if (known(field, one.unit(), tags)) {
        must.merge(
            one.unit(), Math.min(terms.horizon() - 1, one.by() - terms.firstYear()), Math::min);
      }
    }
    return must;
  }

  private Map<String, Integer> mustNot(Terms terms, Map<String, String> tags) {
    Map<String, Integer> mustNot = new HashMap<>();
    List<PlanRequest.MustNot> all = asked.mustNot() == null ? List.of() : asked.mustNot();
    for (int i = 0; i < all.size(); i++) {
      PlanRequest.MustNot one = all.get(i);
      if (one != null && known("/mustNot/" + i, one.unit(), tags)) {
        int before =
            one.before() == null
                ? terms.horizon()
                : Math.max(0, Math.min(terms.horizon(), one.before() - terms.firstYear()));
        mustNot.merge(one.unit(), before, Math::max);
      }
    }
    return mustNot;
  }

  private boolean known(String field, String unit, Map<String, String> tags) {
    if (unit == null || !tags.containsKey(unit)) {
      wrong(field + "/unit", unit, "is the id of a unit of these customers that is in use");
      return false;
    }
    return true;
  }

  private void wrong(String field, Object value, String message) {
    errors.add(new FieldError(field, String.valueOf(value), message));
  }

  private void check() {
    if (!errors.isEmpty()) {
      throw Problem.badFields(errors);
    }
  }
}
