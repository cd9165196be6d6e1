package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Formula injection (CWE-1236): nothing that we export begins a formula, and numbers stay. */
class HarmlessExportTest {

  private static final JavaClasses OURS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("coldround");

  @Test
  void everyCsvThatTheServiceAnswersIsWrittenGuarded() {
    ArchRuleDefinition.noClasses()
        .should()
        .callMethod(SheetWriter.class, "plain", java.io.Writer.class)
        .check(OURS);
  }

  @Test
  void nobodyElseWritesCsv() {
    ArchRuleDefinition.noClasses()
        .that()
        .resideOutsideOfPackage("coldround.sheet")
        .should()
        .dependOnClassesThat()
        .haveNameMatching("com\\.opencsv\\.(CSVWriter|ICSVWriter).*")
        .check(OURS);
  }

  @Provide
  Arbitrary<String> cells() {
    return Arbitraries.strings()
        .withChars("=+-@\t'\"0123456789.,eE abc\n\uFF1D")
        .ofMaxLength(12)
        .filter(cell -> !cell.contains("\0"));
  }

  @Property
  void aCellComesBackAsItWasAndBeginsNoFormula(@ForAll @From("cells") String cell) {
    StringWriter text = new StringWriter();
    SheetWriter.guarded(text).write(List.of("first", cell, "last"));
    List<String> back = SheetReader.standard(new StringReader(text.toString())).next().cells();
    String exported = back.get(1);
    boolean number = exported.matches("[-+]?\\d+([.,]\\d+)?([eE][-+]?\\d{1,3})?");
    assertFalse(
        !number && exported.matches("(?s)[=+\\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20].*"), exported);
    assertEquals(cell.replace("\r\n", "\n"), FormulaGuard.undo(exported).replace("\r\n", "\n"));
  }

  @Property
  void numbersRoundTripUnharmed(@ForAll double value) {
    String cell = new java.math.BigDecimal(Double.isFinite(value) ? value : 0).toPlainString();
    assertEquals(cell, FormulaGuard.guard(cell));
    String scientific = Double.toString(Double.isFinite(value) ? value : 0);
    assertEquals(scientific, FormulaGuard.guard(scientific));
  }
}
