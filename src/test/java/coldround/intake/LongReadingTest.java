package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import coldround.fleet.Entry;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.intake.RowReading.Understood;
import coldround.quantity.Quantity;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LongReadingTest {

  private static Understood read(
      String quantity, String part, String value, String measure, String notTaken) {
    return Lists.row(
        Kind.READINGS,
        Profile.STANDARD,
        List.of(
            "customer",
            "site",
            "unit",
            "visit",
            "quantity",
            "part",
            "value",
            "measure",
            "not_taken"),
        List.of("C", "S", "U", "1", quantity, part, value, measure, notTaken));
  }

  @Test
  void aRowMakesOneReadingOfAPart() {
    Entry entry = read("condenser_fan", "2", "0.51", "A", "").entry();
    Reading expected = new Reading("condenser_fan", "2", Quantity.of(0.51, "A"), "", "");
    assertEquals(expected, entry.said().get("value"));
    assertEquals("condenser_fan", entry.said().get("quantity"));
  }

  @Test
  void bothWaysToSayNotTakenMeanTheSame() {
    Reading expected = Reading.notTaken("box", "probe broken");
    assertEquals(expected, read("box", "", "", "", "probe broken").entry().said().get("value"));
    assertEquals(
        expected, read("box", "", "n/t: probe broken", "degF", "").entry().said().get("value"));
  }

  @Test
  void aHyphenErasesTheReadingOfAQuantity() {
    assertEquals(Entry.ERASED, read("box", "", "-", "", "").entry().said().get("box"));
  }

  @ParameterizedTest
  @CsvSource({
    "humidity, '', 40, %, '', quantity, unknown-code",
    "box, '', 37, psig, '', measure, unknown-measure",
    "box, '', 37, '', '', measure, missing",
    "box, '', '', degF, '', value, missing",
    "box, '', 37, degF, locked, value, contradiction",
    "box, '', n/t, degF, '', value, reason-missing",
    "box, '', cold, degF, '', value, not-a-number",
    "condenser_fan, 1, -0.1, A, '', value, out-of-range",
    "condenser_fan, 1, -, A, '', value, not-erasable",
    "head_pressure, '', -15, psig, '', value, out-of-range"
  })
  void whatMakesNoReadingIsRefused(
      String quantity,
      String part,
      String value,
      String measure,
      String notTaken,
      String column,
      String code) {
    Understood row = read(quantity, part, value, measure, notTaken);
    assertNull(row.entry());
    assertEquals(column, row.problems().get(0).column());
    assertEquals(code, row.problems().get(0).code().text());
  }
}
