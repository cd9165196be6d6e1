package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Trigger characters: CWE-1236 names = + - @; OWASP ASVS 4.0.3, 1.2.10 of the later version, adds
 * tab and NUL (as quoted in the project's notes on CSV; the full-width forms from memory).
 */
class FormulaGuardTest {

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {
        "=1+1,              '=1+1",
        "+1+1,              '+1+1",
        "-1+1,              '-1+1",
        "@SUM(A1),          '@SUM(A1)",
        "~\tx~,             ~'\tx~",
        "~\rx~,             ~'\rx~",
        "＝1+1,             '＝1+1",
        "'=1,               ''=1",
        "-12.5,             -12.5",
        "+3,                +3",
        "~-1,5~,            ~-1,5~",
        "-1.2E+05,          -1.2E+05",
        "-,                 '-",
        "n/t: -,            n/t: -",
        "'coil ok',         'coil ok'",
        "a=b,               a=b"
      })
  void onlyWhatCouldActIsMadeHarmlessAndComesBack(String cell, String harmless) {
    assertEquals(harmless, FormulaGuard.guard(cell));
    assertEquals(cell, FormulaGuard.undo(harmless));
  }
}
