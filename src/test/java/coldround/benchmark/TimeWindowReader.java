package coldround.benchmark;

import coldround.rounds.search.Matrix;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Rates;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.Window;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Reads the format of Solomon (1987) and of Gehring and Homberger: number of vehicles and capacity
 * on one line, customers on lines of seven numbers, the one with number 0 being the depot.
 */
final class TimeWindowReader {

  private static final int COLUMNS = 7;

  /** One line of seven numbers. */
  private record Customer(
      int number, double x, double y, double demand, double ready, double due, double service) {}

  private final List<Customer> customers = new ArrayList<>();
  private final Set<Integer> numbers = new HashSet<>();
  private String name;
  private double vehicles = -1;
  private double capacity = -1;

  private TimeWindowReader() {}

  static RoutingInstance read(List<String> lines, String name) {
    TimeWindowReader reader = new TimeWindowReader();
    for (int i = 0; i < lines.size(); i++) {
      reader.line(lines.get(i).trim(), i + 1);
    }
    return reader.instance(name);
  }

  private void line(String line, int number) {
    if (line.isEmpty()) {
      return;
    }
    String[] tokens = line.split("[\\s,;]+");
    if (isNumber(tokens[0])) {
      numbers(tokens, number);
    } else {
      words(line, tokens, number);
    }
  }

  private static boolean isNumber(String token) {
    return token.matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?");
  }

  /** A title, the name of the instance, or a limit with its word before it. */
  private void words(String line, String[] tokens, int number) {
    String last = tokens[tokens.length - 1];
    String word = tokens[0].toUpperCase(Locale.ROOT);
    if (word.startsWith("NUMBER") && isNumber(last)) {
      vehicles = RoutingFile.number(last, number);
    } else if (word.startsWith("CAPACITY") && isNumber(last)) {
      capacity = RoutingFile.number(last, number);
    } else if (name == null && number(word)) {
      name = line;
    }
  }

  private static boolean number(String word) {
    return !word.startsWith("VEHICLE") && !word.startsWith("NUMBER") && !word.startsWith("CUST");
  }

  private void numbers(String[] tokens, int line) {
    if (tokens.length == 2) {
      vehicles = RoutingFile.whole(tokens[0], line);
      capacity = RoutingFile.number(tokens[1], line);
    } else if (tokens.length == COLUMNS) {
      customer(tokens, line);
    } else {
      throw new IllegalArgumentException(
          "line " + line + ": a customer has " + COLUMNS + " numbers, not " + tokens.length);
    }
  }

  private void customer(String[] tokens, int line) {
    int number = RoutingFile.whole(tokens[0], line);
    if (!numbers.add(number)) {
      throw new IllegalArgumentException("line " + line + ": customer " + number + " comes twice");
    }
    double[] values = new double[COLUMNS];
    for (int i = 1; i < COLUMNS; i++) {
      values[i] = RoutingFile.number(tokens[i], line);
    }
    if (values[3] < 0 || values[6] < 0) {
      throw new IllegalArgumentException(
          "line " + line + ": customer " + number + " has a demand or a service time below 0");
    }
    customers.add(
        new Customer(number, values[1], values[2], values[3], values[4], values[5], values[6]));
  }

  private RoutingInstance instance(String fallback) {
    if (capacity < 0 || vehicles < 0) {
      throw new IllegalArgumentException("the number of vehicles and their capacity are missing");
    }
    if (customers.isEmpty()) {
      throw new IllegalArgumentException("there is no customer");
    }
    Customer depot =
        customers.stream().filter(c -> c.number() == 0).findFirst().orElse(customers.get(0));
    customers.remove(depot);
    customers.add(0, depot);
    List<Customer> stops = customers.subList(1, customers.size());
    return new RoutingInstance(
        name == null ? fallback : name,
        RoutingInstance.Kind.TIME_WINDOWS,
        problem(depot, stops),
        stops.stream().map(Customer::number).toList(),
        List.of());
  }

  private Problem problem(Customer depot, List<Customer> served) {
    Matrix distances =
        Points.distances(
            customers.stream().mapToDouble(Customer::x).toArray(),
            customers.stream().mapToDouble(Customer::y).toArray());
    List<Stop> stops = new ArrayList<>();
    for (Customer c : served) {
      stops.add(
          Stop.at("customer " + c.number(), stops.size() + 1, c.service())
              .within(new Window(c.ready(), c.due()))
              .withDemand(c.demand()));
    }
    Shift shift = Shift.regular(depot.ready(), depot.due());
    int fleet = (int) Math.min(vehicles, Math.max(1, served.size()));
    List<Vehicle> all =
        IntStream.rangeClosed(1, fleet)
            .mapToObj(v -> Vehicle.of("vehicle " + v, 0, shift, Rates.DISTANCE))
            .map(v -> v.withCapacity(capacity))
            .toList();
    return new Problem(all, stops, distances, distances);
  }
}
