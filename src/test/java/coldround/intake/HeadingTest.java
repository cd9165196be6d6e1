package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Kind;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HeadingTest {

  private static Heading read(String... labels) {
    return Lists.heading(Kind.VISITS, Profile.STANDARD, labels);
  }

  private static Heading withColumn(String label) {
    return read("date", "customer", "unit", "visit", "site", label);
  }

  @ParameterizedTest
  @CsvSource({
    "head_pressure [psig], psig",
    "head_pressure [kPa], kPa",
    "Head Pressure [barg], barg",
    "HEAD_PRESSURE (psia), psia",
    " head_pressure[ kPag ] , kPag"
  })
  void aPressureMayBeInAnyUnitGaugeOrAbsolute(String label, String measure) {
    Heading heading = withColumn(label);
    assertEquals("head_pressure", heading.slots().get(5).column().name());
    assertEquals(measure, heading.slots().get(5).measure().code());
    assertEquals(List.of(), heading.problems());
  }

  @ParameterizedTest
  @ValueSource(strings = {"head_pressure [degF]", "head_pressure [psi]", "ambient [deltaF]"})
  void aUnitOfAnotherKindRefusesTheFile(String label) {
    UnreadableFile refusal = assertThrows(UnreadableFile.class, () -> withColumn(label));
    assertEquals("wrong-header", refusal.code());
    assertTrue(refusal.getMessage().contains("is no unit of measure for"), refusal.getMessage());
  }

  @Test
  void aHeaderWithoutUnitIsTakenAsTheStandardSaysAndTold() {
    Heading heading = withColumn("head_pressure");
    assertEquals("psig", heading.slots().get(5).measure().code());
    assertEquals("measure-assumed", heading.problems().get(0).code().text());
  }

  @Test
  void anUnknownColumnIsToldAndIgnored() {
    Heading heading = withColumn("hed_pressure [psig]");
    assertEquals(null, heading.slots().get(5));
    RowProblem problem = heading.problems().get(0);
    assertEquals("unknown-column", problem.code().text());
    assertEquals("hed_pressure [psig]", problem.column());
    assertTrue(problem.message().contains("Did you mean head_pressure?"));
    assertEquals(false, problem.rejects());
  }

  @Test
  void theColumnsOfAFileOfRejectedRowsArePassedOverInSilence() {
    Heading heading =
        read(
            "customer",
            "site",
            "unit",
            "visit",
            "date",
            "problem_row",
            "problem_column",
            "problem",
            "note");
    assertEquals(List.of(), heading.problems());
    assertEquals(List.of("customer", "site", "unit", "visit", "date", "note"), heading.labels());
    assertEquals(8, heading.places().get(5));
  }

  @Test
  void aMissingRequiredColumnIsToldWithWhatIsThereAndExpected() {
    String message =
        assertThrows(UnreadableFile.class, () -> read("customer", "unit", "visit", "day"))
            .getMessage();
    assertTrue(message.contains("required columns are missing: site, date"), message);
    assertTrue(message.contains("There is: customer, unit, visit, day"), message);
    assertTrue(message.contains("ambient [degF]"), message);
  }

  @Test
  void aColumnThatStandsTwiceRefusesTheFile() {
    String message = assertThrows(UnreadableFile.class, () -> withColumn("Date")).getMessage();
    assertTrue(message.contains("'date' and 'Date' mean the same"), message);
  }

  @Test
  void aByteOrderMarkAndEmptyLabelsDoNoHarm() {
    Heading heading = read("\uFEFFcustomer", "site", "unit", "visit", "date", "", "");
    assertEquals("customer", heading.slots().get(0).column().name());
    assertEquals(5, heading.width());
  }
}
