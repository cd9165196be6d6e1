package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Trend tests and power-law fits against published examples. */
class TrendsTest {

  // NIST/SEMATECH e-Handbook 8.2.2.3: ages at repair in hours, observed to 1500 h
  private static final double[] NIST = {5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478};

  // MIL-HDBK-189 (1981) appendix C, 27 failures to 300 h
  private static final double[] HANDBOOK = {
    2.6, 16.5, 16.5, 17.0, 21.4, 29.1, 33.3, 56.5, 63.1, 70.6, 73.0, 77.7, 93.9, 95.5, 98.1, 101.1,
    132.0, 142.2, 147.7, 149.0, 167.2, 190.7, 193.0, 198.7, 251.9, 282.5, 286.1
  };

  // USS Halfbeak No. 4 main diesel, first 20,000 h (Ascher and Feingold 1984; Meeker and Escobar
  // 1998)
  private static final double[] HALFBEAK = {
    1382, 2990, 4124, 6827, 7472, 7567, 8845, 9450, 9794, 10848, 11993, 12300, 15413, 16497, 17352,
    17632, 18122, 19067, 19172, 19299, 19360, 19686, 19940, 19944
  };

  // USS Grampus No. 4 main diesel, observed to 16,000 h (the same books)
  private static final double[] GRAMPUS = {
    860, 1258, 1317, 1442, 1897, 2011, 2122, 2439, 3203, 3298, 3902, 3910, 4000, 4247, 4411, 4456,
    4517, 4899, 4910, 5676, 5755, 6137, 6221, 6311, 6613, 6975, 7335, 8158, 8498, 8690, 9042, 9330,
    9394, 9426, 9872, 10191, 11511, 11575, 12100, 12126, 12368, 12681, 12795, 13399, 13668, 13780,
    13877, 14007, 14028, 14035, 14173, 14173, 14449, 14587, 14610, 15070
  };

  @Test
  void theImprovingSystemOfTheHandbookIsSeenToImprove() {
    EventTrend trend = EventTrend.toTime(1500, NIST);
    assertEquals(-1.326949183, trend.laplace(), 1e-9);
    assertEquals(37.22808148, trend.militaryHandbook(), 1e-8);
    assertEquals(20, trend.degrees());
    assertEquals(0.01098635712, trend.improvingSignificance(), 1e-10);
    assertEquals(0.9890136429, trend.worseningSignificance(), 1e-10);
    assertEquals(0.53722887, trend.shape(), 1e-8);
    assertEquals(0.19665822, trend.scale(), 1e-8);
    assertEquals(0.48350598, trend.unbiasedShape(), 1e-8);
    assertEquals(0.00358153, trend.intensity(), 1e-8);
  }

  @Test
  void thePowerLawOfTheMilitaryHandbookIsFitted() {
    EventTrend trend = EventTrend.toTime(300, HANDBOOK);
    assertEquals(0.7163392624, trend.shape(), 1e-10);
    assertEquals(0.4538418614, trend.scale(), 1e-10);
    assertEquals(0.06447053361, trend.intensity(), 1e-10);
    assertEquals(0.6898081786, trend.unbiasedShape(), 1e-10);
  }

  @Test
  void theDieselThatGotWorseIsFlagged() {
    EventTrend trend = EventTrend.toTime(20000, HALFBEAK);
    assertEquals(2.654337435, trend.laplace(), 1e-9);
    assertEquals(28.14277019, trend.militaryHandbook(), 1e-8);
    assertEquals(1.705589026, trend.shape(), 1e-9);
    assertTrue(trend.worseningSignificance() < 0.05);
  }

  @Test
  void theDieselWithoutTrendIsNotFlagged() {
    EventTrend trend = EventTrend.toTime(16000, GRAMPUS);
    assertEquals(0.3973793459, trend.laplace(), 1e-9);
    assertEquals(98.67226126, trend.militaryHandbook(), 1e-8);
    assertEquals(1.135070774, trend.shape(), 1e-9);
    assertTrue(trend.worseningSignificance() > 0.05);
  }

  @Test
  void anEventOutsideTheObservationIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> EventTrend.toTime(10, 11));
    assertThrows(IllegalArgumentException.class, () -> EventTrend.toTime(10, 0));
  }

  // Sen (1968), as in the test suite of SciPy
  private static final double[] SEN_T = {1, 2, 3, 4, 10, 12, 18};
  private static final double[] SEN_Y = {9, 15, 19, 20, 45, 55, 78};

  @Test
  void theRobustSlopeOfSensExampleIsFour() {
    assertEquals(4, TheilSen.slope(SEN_T, SEN_Y));
    MannKendall trend = MannKendall.of(SEN_Y);
    assertEquals(21, trend.s());
    assertEquals(44.3333333, trend.variance(), 1e-7);
    assertEquals(3.003757046, trend.z(), 1e-9);
  }

  // worked out with SciPy
  @Test
  void oneWildReadingHardlyMovesTheRobustSlope() {
    double[] days = {0, 20, 45, 80, 120, 160};
    double[] excess = {1.2, 2.9, 4.1, 9.0, 30.0, 14.8};
    assertEquals(0.09304348, TheilSen.slope(days, excess), 1e-8);
    assertEquals(13, MannKendall.of(excess).s());
    double[] line = {2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 100};
    double[] x = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    assertEquals(0.5, TheilSen.slope(x, line));
  }

  // NIST/SEMATECH e-Handbook 6.3.2.4 series, worked out with SciPy and exact fractions
  @Test
  void tiesLowerTheVarianceOfMannKendall() {
    double[] series = {
      52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8,
      51.2, 52.6, 52.4, 53.6, 52.1
    };
    MannKendall trend = MannKendall.of(series);
    assertEquals(55, trend.s());
    assertEquals(947, trend.variance(), 1e-9);
    assertEquals(1.754764219, trend.z(), 1e-9);
    assertEquals(0.07929964619, trend.significance(), 1e-9);
    double[] order = new double[20];
    Arrays.setAll(order, i -> i + 1);
    assertEquals(13.0 / 96, TheilSen.slope(order, series), 1e-12);
  }

  @Test
  void withoutTwoDifferentTimesThereIsNoSlope() {
    assertTrue(Double.isNaN(TheilSen.slope(new double[] {3, 3}, new double[] {1, 2})));
  }
}
