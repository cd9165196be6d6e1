package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FigureTableTest {

  private static Figure figure(String command, double goal) {
    return new Figure(command, "/a", "", true, OptionalDouble.of(goal), "time of x");
  }

  @Test
  void oneProgramOnBothKindsOfStoreIsOneRow() {
    FigureTable table = new FigureTable();
    table.add(figure("x 10", 2), Spread.of(1.5, 1.25, 1.75));
    table.add(figure("x 10 postgresql", 2), Spread.of(2.125));
    table.add(
        new Figure("y", "/b", "", true, OptionalDouble.empty(), "of y"), Spread.of(120.4, 11.04));
    assertEquals(
        """
        | command | figure | goal | H2, or no store | PostgreSQL |
        |---|---|---|---|---|
        | `x 10` | time of x | 2.00 | 1.50 (3: 1.25 to 1.75) | 2.13 (once) **not reached** |
        | `y` | of y |  | 120 (2: 11.0 to 120) |  |
        """,
        table.toString());
  }
}
