package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExcelCellsTest {

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {
        "=\"00123\",       00123",
        "=\"5\"\" pipe\",  5\" pipe",
        "'00123,           '00123",
        "'=1+1,            =1+1",
        "=1+1,             =1+1",
        "plain,            plain"
      })
  void cellsAreReadAsTheyWereMeant(String cell, String meant) {
    assertEquals(meant, ExcelCells.meant(cell));
  }

  @ParameterizedTest
  @CsvSource({
    "1.2E+05, 120000, true",
    "'1,2E+05', 120000, true",
    "1.23456E+05, 123456, false",
    "4E+00, 4, false",
    "1.25E+01, '', false",
    "12E5, '', false",
    "U-1E+5, '', false"
  })
  void serialNumbersInScientificFormAreWrittenOut(String cell, String whole, boolean lost) {
    assertEquals(whole, ExcelCells.expanded(cell).orElse(""));
    assertEquals(lost, ExcelCells.hasLostDigits(cell));
  }

  /** 25569 is 1970-01-01 in the usual conversion to Unix time; the others counted from it. */
  @ParameterizedTest
  @CsvSource({
    "25569, 1970-01-01T00:00",
    "42125, 2015-05-01T00:00",
    "42125.5, 2015-05-01T12:00",
    "1, 1900-01-01T00:00",
    "59, 1900-02-28T00:00",
    "60, ''",
    "61, 1900-03-01T00:00",
    "0.5, ''",
    "-3, ''",
    "3000000, ''",
    "NaN, ''"
  })
  void serialDaysAreDates(double serial, String moment) {
    assertEquals(moment, ExcelCells.moment(serial).map(Object::toString).orElse(""));
  }
}
