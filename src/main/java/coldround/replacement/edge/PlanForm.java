package coldround.replacement.edge;

import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.http.Wrong;
import coldround.replacement.EconomicRate;
import coldround.replacement.Economics;
import coldround.replacement.Moved;
import coldround.replacement.edge.PlanRequest.Amount;
import coldround.replacement.edge.PlanRequest.Factors;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The fields of the page as they were typed; empty text for what was not. */
record PlanForm(
    String customer,
    String limit,
    String horizon,
    String rate,
    String price,
    String faults,
    String refrigerant,
    String electricity,
    String currency) {

  static final List<String> FIELDS =
      List.of(
          "customer", "limit", "horizon", "rate", "price", "faults", "refrigerant", "electricity");

  // the call of programs names some things otherwise
  private static final Map<String, String> NAMED =
      Map.of("discountRate", "rate", "customers", "customer");

  /** What is wrong, by the names that the form has for it. */
  static Wrong wrong(Problem problem) {
    return new Wrong(
        Wrong.of(problem).errors().stream()
            .map(error -> new FieldError(field(error.field()), error.value(), said(error)))
            .toList());
  }

  // a list is chosen from, and factors are typed in percent
  private static String said(FieldError error) {
    String field = field(error.field());
    if (field.equals("customer")) {
      return "is one of the customers in the list";
    }
    return error.field().startsWith("/factors/")
        ? "is a number from %.0f to %.0f".formatted(100 * Moved.LEAST, 100 * Moved.MOST)
        : error.message();
  }

  private static String field(String pointer) {
    return List.of(pointer.split("/")).stream()
        .map(part -> NAMED.getOrDefault(part, part))
        .filter(FIELDS::contains)
        .findFirst()
        .orElse(pointer);
  }

  /** As the address or the body of the form has them. */
  static PlanForm of(MultivaluedMap<String, String> typed, Economics economics) {
    return new PlanForm(
        typed(typed, "customer", ""),
        typed(typed, "limit", ""),
        typed(typed, "horizon", "" + (int) economics.value(EconomicRate.HORIZON)),
        typed(typed, "rate", plain(economics.discount().amount())),
        typed(typed, "price", "100"),
        typed(typed, "faults", "100"),
        typed(typed, "refrigerant", "100"),
        typed(typed, "electricity", "100"),
        economics.costs().currency().code());
  }

  private static String typed(MultivaluedMap<String, String> typed, String name, String unsaid) {
    String text = typed.getFirst(name);
    return text == null || text.isBlank() ? unsaid : text.strip();
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** One cost that can be moved, in percent of the tables. */
  public record Slider(String name, String label, String value) {}

  public List<Slider> sliders() {
    return List.of(
        new Slider("price", "Price of new units", price),
        new Slider("faults", "Cost of faults", faults),
        new Slider("refrigerant", "Cost of refrigerant", refrigerant),
        new Slider("electricity", "Cost of electricity", electricity));
  }

  /** A number that nobody can read is left to be refused with its field. */
  private static Double number(String text) {
    try {
      return Double.valueOf(text);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static Double share(String text) {
    return number(text) / 100;
  }

  PlanRequest request(Integer runs) {
    double years = number(horizon);
    return new PlanRequest(
        List.of(customer),
        null,
        years == Math.rint(years) ? (int) years : 0,
        null,
        limit.isEmpty() ? null : new Amount(number(limit), currency),
        null,
        null,
        new Amount(number(rate), "%/a"),
        null,
        null,
        null,
        null,
        null,
        runs,
        new Factors(share(price), share(faults), share(refrigerant), share(electricity)));
  }

  String query() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("customer", customer);
    fields.put("limit", limit);
    fields.put("horizon", horizon);
    fields.put("rate", rate);
    sliders().forEach(slider -> fields.put(slider.name(), slider.value()));
    List<String> parts = new ArrayList<>();
    fields.forEach(
        (name, value) -> parts.add(name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)));
    return String.join("&", parts);
  }
}
