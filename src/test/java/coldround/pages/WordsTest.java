package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {

  @ParameterizedTest
  @CsvSource({
    "condenser-coil-cleaning, Condenser coil cleaning",
    "head_pressure, Head pressure",
    "tripAmbient, Trip ambient",
    "high_cutout, High cut-out",
    "voltage_l1_l2, Voltage L1-L2",
    "'', ''"
  })
  void aCodeIsSaidAsThePeopleOfTheTradeSayIt(String code, String said) {
    assertEquals(said, Words.title(code));
  }

  @Test
  void workOfAVisitIsOneLine() {
    assertEquals(
        "condenser coil cleaned, cut-out reset",
        Words.list(List.of("condenser-coil-cleaned", "cut-out-reset")));
  }

  @ParameterizedTest
  @CsvSource({"0, 0 units", "1, 1 unit", "90, 90 units", "100000, '100,000 units'"})
  void unitsAreCounted(long number, String said) {
    assertEquals(said, Words.count(number, "unit", "units"));
  }
}
