package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.scoring.statistics.MeanCumulativeFunction.History;
import coldround.scoring.statistics.MeanCumulativeFunction.Step;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeanCumulativeFunctionTest {

  // valve seats of 41 diesel engines (Nelson and Doganaksoy 1989; Nelson 1995): each engine's end
  // of
  // observation in days, then the ages at replacement
  private static final String VALVE_SEATS =
      """
      761, 759, 667 98, 667 326 653 653, 665, 667 84,
      663 87, 653 646, 653 92, 651, 650 258 328 377 621, 648 61 539,
      644 254 276 298 640, 642 76 538, 641 635, 649 349 404 561, 631, 596,
      614 120 479, 582 323 449, 589 139 139, 593, 589 573, 606 165 408 604,
      594 249, 613 344 497, 595 265 586, 389 166 206 348, 601, 601 410 581,
      611, 608, 587, 603 367, 585 202 563 570, 587,
      578, 578, 586, 585, 582
      """;

  private static final List<Step> STEPS = MeanCumulativeFunction.of(engines());

  private static List<History> engines() {
    return Arrays.stream(VALVE_SEATS.split(","))
        .map(String::strip)
        .map(MeanCumulativeFunctionTest::engine)
        .toList();
  }

  private static History engine(String days) {
    double[] numbers = Arrays.stream(days.split(" ")).mapToDouble(Double::parseDouble).toArray();
    return new History(numbers[0], Arrays.copyOfRange(numbers, 1, numbers.length));
  }

  // worked out apart with numpy: at risk, replacements, mean, robust standard error
  @ParameterizedTest
  @CsvSource({
    "61,  41, 1, 0.024390, 0.024091",
    "166, 41, 1, 0.268293, 0.077317",
    "326, 41, 1, 0.512195, 0.109740",
    "449, 40, 1, 0.758537, 0.142702",
    "653,  9, 2, 1.542688, 0.311656",
  })
  void valveSeatsOfDieselEnginesAreAsPublished(
      double age, int atRisk, int events, double mean, double error) {
    Step step = STEPS.stream().filter(s -> s.age() == age).findFirst().orElseThrow();
    assertEquals(atRisk, step.atRisk());
    assertEquals(events, step.events());
    assertEquals(mean, step.mean(), 1e-6);
    assertEquals(error, step.standardError(), 1e-6);
  }

  @Test
  void everyReplacementIsCounted() {
    assertEquals(41, engines().size());
    assertEquals(48, STEPS.stream().mapToInt(Step::events).sum());
  }

  @Test
  void withoutEventsThereIsNoStep() {
    assertEquals(List.of(), MeanCumulativeFunction.of(List.of(new History(10))));
  }
}
