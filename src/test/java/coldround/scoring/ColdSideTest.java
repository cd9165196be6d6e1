package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.refrigerant.SaturationCurve;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColdSideTest {

  private static final SaturationCurve GAS =
      Rules.GASES.refrigerants().curve("R-404A").orElseThrow();

  /** A walk-in at 37 °F with that coil difference and superheat. */
  private static UnitFile unit(double differenceF, double superheatF) {
    double evaporatingF = 37 - differenceF;
    UnitFile file = new UnitFile();
    file.visit(5)
        .read("box", 37, "degF")
        .read("suction_pressure", GAS.dewPressureKpa((evaporatingF - 32) / 1.8), "kPa")
        .read("suction_line", evaporatingF + superheatF, "degF");
    return file;
  }

  private static EvaporatorState state(UnitFile file) {
    return file.assessed().evaporator();
  }

  // usual difference of a walk-in 8 to 12 °F; superheat below 4 or above 30 °F: the packaged limits
  @ParameterizedTest
  @CsvSource({
    "10,   15,   ''",
    "8.1,  15,   ''",
    "7.9,  15,   evaporator-difference-low",
    "11.9, 15,   ''",
    "12.1, 15,   evaporator-difference-high",
    "12.1, 31,   evaporator-starved;superheat-high",
    "10,   29.9, ''",
    "10,   30.1, superheat-high",
    "10,   4.1,  ''",
    "10,   3.9,  superheat-low",
  })
  void differenceAndSuperheatTellTroubleApart(double differenceF, double superheatF, String codes) {
    EvaporatorState state = state(unit(differenceF, superheatF));
    assertEquals(differenceF / 1.8, state.differenceK().orElseThrow(), 0.02);
    assertEquals(superheatF / 1.8, state.superheatK().orElseThrow(), 0.02);
    String found = String.join(";", state.findings().stream().map(r -> r.code()).toList());
    assertEquals(codes, found);
  }

  // air drop 3 to 10 °F: the packaged limits
  @ParameterizedTest
  @CsvSource({"3,", "2.9, evaporator-air-drop", "10,", "10.1, evaporator-air-drop"})
  void theDropOfTheAirAcrossTheCoilHasItsBand(double dropF, String code) {
    UnitFile file = new UnitFile();
    file.visit(5).read("evaporator_in", 38, "degF").read("evaporator_out", 38 - dropF, "degF");
    List<String> codes = state(file).findings().stream().map(r -> r.code()).toList();
    assertEquals(code == null ? List.of() : List.of(code), codes);
  }

  @Test
  void subcoolingIsBelowTheBubblePoint() {
    UnitFile file = new UnitFile();
    file.visit(5)
        .read("head_pressure", GAS.bubblePressureKpa(40), "kPa")
        .read("liquid_line", 34, "degC");
    assertEquals(6, state(file).subcoolingK().orElseThrow(), 0.02);
  }

  @Test
  void withoutReadingsThereIsOnlyTheGrade() {
    UnitFile file = new UnitFile();
    file.visit(5).found("evaporator_coil", "moderate");
    EvaporatorState state = state(file);
    assertTrue(state.date().isEmpty() && state.findings().isEmpty());
    assertEquals("moderate", state.grade().orElseThrow());
  }
}
