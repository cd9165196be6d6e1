package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.rounds.search.Goal;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Window;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented files in the public formats, in the odd shapes such files come in. */
class RoutingFileTest {

  private static final String TIME_WINDOWS =
      """
      TINY\r
      \r
      VEHICLE\r
      NUMBER     CAPACITY\r
        2         10\r
      \r
      CUSTOMER\r
      CUST NO.  XCOORD.   YCOORD.    DEMAND   READY TIME  DUE DATE   SERVICE   TIME\r
      \r
          0      0         0          0          0       100          0\r
          1      3         4          7          5        20          2\r
          2      6         8          6         30        40          3\r
      """;

  private static final String CAPACITY =
      """
      DEMAND_SECTION
       1 0
       3   4
       2 5
      NAME : tiny
      TYPE:CVRP
      DIMENSION :3
      EDGE_WEIGHT_TYPE : EUC_2D
      CAPACITY : 9
      DEPOT_SECTION
       1
       -1
      NODE_COORD_SECTION
      1 0 0
         2 1 1
      3 0 1.5
      EOF
      """;

  @Test
  void timeWindowsWithTheirVehiclesAsALimit() {
    RoutingInstance instance = RoutingFile.read(TIME_WINDOWS, "file");
    assertEquals("TINY", instance.name());
    assertEquals(List.of(1, 2), instance.numbers());
    Problem problem = instance.problem();
    assertEquals(2, problem.vehicles().size());
    assertEquals(10, problem.vehicles().get(0).capacity());
    assertEquals(100, problem.vehicles().get(0).shift().hardEnd());
    Stop second = problem.stops().get(1);
    assertEquals(List.of(new Window(30, 40)), second.windows());
    assertEquals(3, second.serviceMinutes());
    assertEquals(5, problem.distance().between(0, 1));
  }

  @Test
  void theLimitMayStandBehindTheCustomersAndWhiteSpaceMayBeTabs() {
    String turned =
        "CUSTOMER\n\tCUST NO.\n0\t0 0 0 0 100 0\n\n\n1\t3 4 7 5 20 2\nVEHICLE\nNUMBER CAPACITY\n\t1\t10";
    RoutingInstance instance = RoutingFile.read(turned, "file");
    assertEquals("file", instance.name());
    assertEquals(1, instance.problem().vehicles().size());
    assertEquals(List.of(1), instance.numbers());
  }

  @Test
  void capacityInAnyOrderOfSectionsIsRoundedToWholeDistances() {
    RoutingInstance instance = RoutingFile.read(CAPACITY, "file");
    assertEquals("tiny", instance.name());
    assertEquals(List.of(2, 3), instance.numbers());
    Problem problem = instance.problem();
    assertEquals(5, problem.stops().get(0).demand());
    assertEquals(1, problem.distance().between(0, 1));
    // nint of TSPLIB rounds the half up
    assertEquals(2, problem.distance().between(0, 2));
  }

  @Test
  void prizesMakeStopsOptionalAndDistancesReal() {
    String text = CAPACITY.replace("EOF", "PRIZE_SECTION\n1 0\n2 8\n3 1\nEOF");
    RoutingInstance instance = RoutingFile.read(text + "\n", "file");
    assertEquals(RoutingInstance.Kind.PROFIT, instance.kind());
    assertEquals(8, instance.problem().stops().get(0).priceLeftOut());
    assertEquals(Math.sqrt(2), instance.problem().distance().between(0, 1));
    Plan plan = Rounds.plan(instance, Goal.LOWEST_COST, 0.2);
    assertTrue(Rounds.feasible(instance, plan));
    assertEquals(8 - 2 * Math.sqrt(2), instance.objective(plan), 1e-9);
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
      n;4|m;2|tmax;6.0|0;0;0|1;0;10|2;0;20|3;0;0
      n 4|m 2|tmax 6.0||0 0 0|1 0 10|2 0 20|3 0 0
      tmax; 6|m; 2|n; 4|0;0;0|1;0;10|2;0;20|3;0;0|
      """)
  void teamOrienteeringStartsAtTheFirstPointAndEndsAtTheLast(String lines) {
    RoutingInstance instance = RoutingFile.read(lines.replace('|', '\n'), "p0.2.a");
    assertEquals(List.of(1, 2), instance.numbers());
    assertEquals(2, instance.problem().vehicles().size());
    assertEquals(3, instance.problem().vehicles().get(0).end());
    Plan plan = Rounds.plan(instance, Goal.LOWEST_COST, 0.2);
    assertEquals(30, instance.objective(plan));
    assertEquals(3, plan.distance(), 1e-9);
  }

  /** ulysses16 of TSPLIB, its optimum 6859 proved there; coordinates from the library. */
  @Test
  void geographicalDistancesFollowTsplib() {
    String text =
        """
        TYPE: TSP
        DIMENSION: 2
        EDGE_WEIGHT_TYPE: GEO
        NODE_COORD_SECTION
         1 38.24 20.42
         2 39.57 26.15
        EOF
        """;
    // 509 is the first entry of the matrix commonly printed for ulysses16, from memory
    assertEquals(509, RoutingFile.read(text, "x").problem().distance().between(0, 1));
  }

  @Test
  void explicitMatricesAreReadByTheirFormat() {
    String text =
        """
        DIMENSION : 3
        EDGE_WEIGHT_TYPE : EXPLICIT
        EDGE_WEIGHT_FORMAT : LOWER_ROW
        EDGE_WEIGHT_SECTION
        4
        5 6
        EOF
        """;
    Problem problem = RoutingFile.read(text, "x").problem();
    assertEquals(4, problem.distance().between(0, 1));
    assertEquals(6, problem.distance().between(2, 1));
    assertEquals(1, problem.vehicles().size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      textBlock =
          """
      4          7   ! four      7   ! "four" is not a number
      4          7   ! 7   ! a customer has 7 numbers, not 6
      2         10         ! nothing here         ! number of vehicles and their capacity are missing
          2      6         ! 1      6             ! customer 1 comes twice
      """)
  void aBrokenFileOfTimeWindowsIsNamed(String part, String broken, String message) {
    String text = TIME_WINDOWS.replace(part, broken);
    Exception e =
        assertThrows(IllegalArgumentException.class, () -> RoutingFile.read(text, "file"));
    assertTrue(e.getMessage().contains(message), e.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      textBlock =
          """
      DIMENSION :3     ! DIMENSION :4       ! DIMENSION is 4 but there are 3 nodes
      CAPACITY : 9     ! COMMENT : none     ! the entry CAPACITY is missing
      EUC_2D           ! XRAY1              ! EDGE_WEIGHT_TYPE XRAY1 is not supported
      3   4            ! 4   4              ! node 3 has no demand
      3 0 1.5          ! 2 0 1.5            ! node 2 comes twice
      """)
  void aBrokenTsplibFileIsNamed(String part, String broken, String message) {
    String text = CAPACITY.replace(part, broken);
    Exception e =
        assertThrows(IllegalArgumentException.class, () -> RoutingFile.read(text, "file"));
    assertTrue(e.getMessage().contains(message), e.getMessage());
  }

  @Test
  void aTextOfNoKnownFormatIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> RoutingFile.read("a,b\n1,2\n", "file"));
    assertThrows(IllegalArgumentException.class, () -> RoutingFile.read("", "file"));
  }

  @Test
  void aCustomerThatNoVehicleCanServeIsNamed() {
    RoutingInstance instance =
        RoutingFile.read(
            TIME_WINDOWS.replace("7          5        20", "11         5        20"), "f");
    Exception e =
        assertThrows(
            IllegalArgumentException.class, () -> Rounds.plan(instance, Goal.LOWEST_COST, 0.2));
    assertEquals(
        "TINY: customer 1 cannot be served: "
            + "the demand exceeds the capacity of every allowed vehicle",
        e.getMessage());
  }

  @Test
  void moreDemandThanAllVehiclesHoldIsNamed() {
    RoutingInstance instance =
        RoutingFile.read(TIME_WINDOWS.replace("  2         10", "  1         10"), "f");
    Exception e =
        assertThrows(
            IllegalArgumentException.class, () -> Rounds.plan(instance, Goal.LOWEST_COST, 0.2));
    assertEquals("TINY: the demand of 13.0 exceeds all capacity, 10.0", e.getMessage());
  }

  @Test
  void aTinyFileIsPlannedAtItsShortest() {
    RoutingInstance instance = RoutingFile.read(TIME_WINDOWS, "file");
    Plan plan = Rounds.plan(instance, Goal.LOWEST_COST, 0.2);
    assertTrue(Rounds.feasible(instance, plan));
    // 7 + 6 exceed the capacity of 10, so each customer has its own way there and back
    assertEquals(10 + 20, plan.distance(), 1e-9);
  }
}
